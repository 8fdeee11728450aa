import { type Say, trimmed } from '../../length/index.js';
import { optionName, type ParameterValue } from '../../model/index.js';
import { json } from './json.js';
import type { Summary } from './summary.js';

type Value = string | number | boolean | undefined;

/** One figure that is not what it was; a value is undefined where there was, or is, none. */
export interface Change {
  readonly of: 'program' | 'shop' | 'parameter' | 'derived' | 'board' | 'joint';
  /** `rake`, `left-side`, `tread/left-side`. */
  readonly subject: string;
  /** What of it: `length`, `tenon width`; empty when the subject itself came or went. */
  readonly what: string;
  readonly was: Value;
  readonly is: Value;
  readonly unit: ParameterValue['unit'];
}

/** What of a summary is compared. */
type Compared = Pick<Summary, 'version' | 'parameters' | 'derived' | 'boards' | 'joints'> & {
  readonly shop: Pick<NonNullable<Summary['shop']>, 'atHand'> | null;
};

/** A figure of a summary under a name of its own. */
type Row = Omit<Change, 'was' | 'is'> & { readonly value: Value };

/**
 * What changed since the last run, from the two summaries: the program itself, the
 * shop where both runs made papers for it, parameters, figures worked out, boards and joints. Files and findings are left out.
 *
 * @param before the last `summary.json`, parsed; what is not a summary counts as none
 * @returns nothing when there is no last run to compare with, or nothing changed
 */
export function changesSince(before: unknown, now: Summary): readonly Change[] {
  if (!isSummary(before)) return [];
  // both as they are written, so that only what can be read can differ
  const { version, parameters, derived, boards, joints } = now;
  const shop = before.shop?.atHand && now.shop ? { atHand: now.shop.atHand } : null;
  const written = JSON.parse(json({ version, parameters, derived, boards, joints, shop })) as Compared;
  const [old, fresh] = [rowsOf(shop ? before : { ...before, shop }), rowsOf(written)];
  const keys = new Set([...old.keys(), ...fresh.keys()]);
  return [...keys].flatMap((key): Change[] => {
    const [was, is] = [old.get(key), fresh.get(key)];
    if (was?.value === is?.value) return [];
    const { of, subject, what, unit } = (is ?? was)!;
    return [{ of, subject, what, unit, was: was?.value, is: is?.value }];
  });
}

/** The changes as sentences, a line each. @example 'parameter rake: 10° -> 12°' */
export const changeLines = (changes: readonly Change[], say: Say): readonly string[] =>
  changes.map(({ of, subject, what, was, is, unit }) => {
    const told = (value: Value): string => {
      if (typeof value !== 'number') return String(value);
      return unit === 'mm' ? say.fine(value) : unit === 'deg' ? say.angle(value) : trimmed(value, 3);
    };
    const about = [of, subject, what].filter((word) => word !== '').join(' ');
    if (was === undefined) return what === '' ? `${about} is new` : `${about}: now ${told(is)}`;
    if (is === undefined) return what === '' ? `${about} is gone` : `${about}: no longer ${told(was)}`;
    return `${about}: ${told(was)} -> ${told(is)}`;
  });

function rowsOf(summary: Compared): ReadonlyMap<string, Row> {
  const rows: Row[] = [
    { of: 'program', subject: '', what: 'version', value: summary.version, unit: '' },
    ...(summary.shop ? shopRows(summary.shop.atHand, []) : []),
    ...Object.entries(summary.parameters).map(
      ([name, { value, unit }]: [string, ParameterValue]): Row => ({
        of: 'parameter',
        subject: optionName(name),
        what: '',
        value,
        unit,
      }),
    ),
    ...summary.derived.map(
      ({ name, value, unit }): Row => ({ of: 'derived', subject: name, what: '', value, unit }),
    ),
    ...summary.boards.flatMap((board) => {
      const row = (what: string, value: Value, unit: Row['unit']): Row => ({
        of: 'board',
        subject: board.id,
        what,
        value,
        unit,
      });
      return [
        row('', board.id, ''),
        row('material', board.material, ''),
        row('length', board.blank.length, 'mm'),
        row('width', board.blank.width, 'mm'),
        row('thickness', board.blank.thickness, 'mm'),
        // a volume tells of cuts that leave the blank as it is
        row('volume in cm³', Number((board.volumeMm3 / 1000).toFixed(2)), ''),
      ];
    }),
    ...summary.joints.flatMap((joint) => {
      const row = (what: string, value: Value): Row => ({
        of: 'joint',
        subject: joint.tenon.id,
        what,
        value,
        unit: typeof value === 'number' ? 'mm' : '',
      });
      return [
        row('', joint.tenon.id),
        row('tenon thickness', joint.tenon.thickness),
        row('tenon width', joint.tenon.width),
        row('tenon length', joint.tenon.length),
        ...joint.mortises.flatMap((mortise) => [
          row(`mortise length in ${mortise.board}`, mortise.length),
          row(`mortise depth in ${mortise.board}`, mortise.depth),
        ]),
      ];
    }),
  ];
  return new Map(rows.map((row) => [`${row.of} ${row.subject} ${row.what}`, row]));
}

/** Every figure of the shop under the words that lead to it: `cutters 2 slot-in-face`. */
function shopRows(value: unknown, words: readonly string[]): readonly Row[] {
  if (typeof value === 'object' && value !== null)
    return Object.entries(value).flatMap(([name, one]) =>
      shopRows(one, [...words, Array.isArray(value) ? String(Number(name) + 1) : optionName(name)]),
    );
  const what = words.join(' ');
  const unit = typeof value === 'number' && !NO_LENGTH.test(what) ? 'mm' : '';
  return [{ of: 'shop', subject: '', what, value: value as Value, unit }];
}

/** Figures of a shop that are not lengths, and those of the jig, which are given in any unit. */
const NO_LENGTH = /^jig |count$|minutes$|celsius$/;

const isSummary = (value: unknown): value is Summary => {
  if (typeof value !== 'object' || value === null) return false;
  const { parameters, boards, joints, derived, version } = value as Partial<Summary>;
  return (
    typeof parameters === 'object' &&
    parameters !== null &&
    [boards, joints, derived].every(Array.isArray) &&
    typeof version === 'string'
  );
};
