import type { Finding } from '../checks/index.js';
import { STRENGTH_BASES } from '../strength/index.js';

/** Errors, and whatever gives cause to worry that a piece stands and bears. */
export const worthCuring = ({ level, code }: Finding): boolean =>
  level === 'error' || (level === 'warning' && code in STRENGTH_BASES);

/** What one cure ends: all findings of a code, or of a code and of one figure where pieces have more of a kind. */
export const cureKey = ({ code, of }: Finding): string => (of === undefined ? code : `${code}: ${of}`);

export const sameSubjects = (a: Finding, b: Finding): boolean =>
  a.subjects.join('\n') === b.subjects.join('\n');

/** The kinds the data alone know as well as the full verdict does: every one of its findings, to a hundredth. */
export const knownByData = (quick: readonly Finding[], full: readonly Finding[]): ReadonlySet<string> =>
  new Set(
    full
      .map(cureKey)
      .filter((key) =>
        full
          .filter((finding) => cureKey(finding) === key)
          .every((finding) =>
            quick.some(
              (other) =>
                cureKey(other) === key &&
                sameSubjects(other, finding) &&
                Math.abs(other.measured - finding.measured) <= Math.abs(finding.measured) / 100,
            ),
          ),
      ),
  );
