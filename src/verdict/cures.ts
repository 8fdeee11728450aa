import type { Finding } from '../checks/index.js';
import { canBeBuilt } from '../model/index.js';
import { toolsOf } from '../shop/index.js';
import { STRENGTH_BASES } from '../strength/index.js';
import { asTyped, type Knob, knobs, nudge, onGrid, outwards, shareMoved } from './knobs.js';
import { type Question, type Values, type Verdict, verdictOf } from './verdict.js';

/** One dimension that ends a finding, tried by a full verdict. */
export interface Cure {
  /** camelCase name of the parameter. */
  readonly parameter: string;
  /** mm, degrees or a count. */
  readonly value: number;
  /** As it is typed: `--rake 8.5deg`. */
  readonly typed: string;
}

/** Full verdicts spent on the cures of one design at most. */
const MOST_VERDICTS = 60;

/** Verdicts spent on one code of finding once the effect of every dimension is known. */
const MOST_TRIES = 6;

/** Errors, and whatever gives cause to worry that a piece stands and bears. */
export const worthCuring = ({ level, code }: Finding): boolean =>
  level === 'error' || (level === 'warning' && code in STRENGTH_BASES);

/** What one cure ends: all findings of a code, or of a code and of one figure where pieces have more of a kind. */
export const cureKey = ({ code, of }: Finding): string => (of === undefined ? code : `${code}: ${of}`);

/**
 * For every kind of error, and of warning about standing and strength: the one dimension whose change ends all of that kind and
 * starts no other, the given dimensions first, then the least change by its share of the dimension's range.
 *
 * Each dimension is moved a little to see what it does to the measured figure, the place where the figure meets its limit is
 * worked out from that, and a full verdict there decides. A cure is never told that was not tried.
 *
 * @param given camelCase names of the parameters the person gave
 * @returns by {@link cureKey}; a kind for which none was found is left out
 */
export async function curesOf(
  question: Question,
  values: Values,
  findings: readonly Finding[],
  given: readonly string[] = [],
): Promise<ReadonlyMap<string, Cure>> {
  const errors = findings.filter(worthCuring);
  const codes = [...new Set(errors.map(cureKey))];
  const cures = new Map<string, Cure>();
  let spent = 0;
  const judge = (knob: Knob, value: number): Promise<Verdict> => {
    spent += 1;
    return verdictOf(question, { ...values, [knob.name]: value });
  };
  const all = knobs(question.model, question.model.complete(values, toolsOf(question.shop)), given);
  for (const group of [all.filter((knob) => knob.given), all.filter((knob) => !knob.given)]) {
    const open = codes.filter((code) => !cures.has(code));
    if (open.length === 0 || spent >= MOST_VERDICTS) break;
    const effects: { knob: Knob; step: number; verdict: Verdict }[] = [];
    for (const knob of group) {
      if (spent >= MOST_VERDICTS) break;
      const step = nudge(knob);
      effects.push({ knob, step, verdict: await judge(knob, knob.value + step) });
    }
    for (const code of open) {
      const ranked = effects
        .flatMap(({ knob, step, verdict }) => {
          const value = meets(knob, step, errors, verdict.findings, code, question.units);
          return value === undefined ? [] : [{ knob, value }];
        })
        .toSorted((a, b) => shareMoved(a.knob, a.value) - shareMoved(b.knob, b.value));
      for (const { knob, value } of ranked.slice(0, MOST_TRIES)) {
        const found = await firstThatCures(knob, value, question, (at) =>
          judge(knob, at).then((verdict) => cured(verdict, code, codes)),
        );
        if (found === undefined) continue;
        cures.set(code, { parameter: knob.name, value: found, typed: asTyped(knob, found, question.units) });
        break;
      }
    }
  }
  return cures;
}

/** What is of that kind is gone, and nothing came that was not there. */
const cured = ({ findings, refused }: Verdict, code: string, before: readonly string[]): boolean =>
  refused === undefined &&
  findings.every(
    (finding) => !worthCuring(finding) || (cureKey(finding) !== code && before.includes(cureKey(finding))),
  );

/** How far beyond the place worked out is tried: what gives by the third power of a thickness is met much later. */
const FURTHER = [1, 1.25, 2, 3] as const;

/** The place worked out, or further: a figure that bends is met later. */
async function firstThatCures(
  knob: Knob,
  value: number,
  { units }: Question,
  tried: (value: number) => Promise<boolean>,
): Promise<number | undefined> {
  let last: number | undefined;
  for (const times of FURTHER) {
    const at = times === 1 ? value : onGrid(knob, knob.value + (value - knob.value) * times, units);
    if (at === undefined) return undefined;
    if (at !== last && (await tried(at))) return at;
    last = at;
  }
  return undefined;
}

/** Where a dimension brings every figure of a code to its limit, going on as it began; undefined when it does not help. */
function meets(
  knob: Knob,
  step: number,
  before: readonly Finding[],
  after: readonly Finding[],
  code: string,
  units: Question['units'],
): number | undefined {
  const places = before
    .filter((finding) => cureKey(finding) === code)
    .map((finding) => {
      const moved = after.find((other) => cureKey(other) === code && sameSubjects(other, finding));
      if (!moved) return knob.value + step;
      const off = finding.measured - aim(finding);
      const change = moved.measured - aim(moved) - off;
      return Math.abs(change) < 1e-9 ? undefined : knob.value - (off * step) / change;
    });
  if (places.some((place) => place === undefined)) return undefined;
  const sides = new Set(places.map((place) => Math.sign(place! - knob.value)));
  if (sides.size !== 1) return undefined;
  const furthest = places.reduce((a, b) => (Math.abs(b! - knob.value) > Math.abs(a! - knob.value) ? b : a))!;
  return onGrid(knob, furthest, units);
}

const aim = ({ limit, wanted }: Finding): number => wanted ?? limit;

const sameSubjects = (a: Finding, b: Finding): boolean => a.subjects.join('\n') === b.subjects.join('\n');

/**
 * For a design that cannot be built: the one dimension whose change lets it be built and leaves no error, tried by a full
 * verdict; the given dimensions first, then the least change by its share of the dimension's range.
 */
export async function cureOfRefusal(
  question: Question,
  values: Values,
  given: readonly string[] = [],
): Promise<Cure | undefined> {
  const built = canBeBuilt(question.model, values, toolsOf(question.shop));
  const all = knobs(question.model, question.model.complete(values, toolsOf(question.shop)), given);
  for (const group of [all.filter((knob) => knob.given), all.filter((knob) => !knob.given)]) {
    const ranked = group
      .flatMap((knob) =>
        spreadOut(
          outwards(knob, question.units).filter((value) => built(knob.name, value)),
          knob.given ? MOST_TRIES : 2,
        ).map((value, i) => ({ knob, value: i === 0 ? nearestBuilt(knob, value, question, built) : value })),
      )
      .toSorted((a, b) => shareMoved(a.knob, a.value) - shareMoved(b.knob, b.value));
    for (const { knob, value } of ranked.slice(0, 2 * MOST_TRIES)) {
      const { findings, refused } = await verdictOf(question, { ...values, [knob.name]: value });
      if (refused || findings.some(({ level }) => level === 'error')) continue;
      return { parameter: knob.name, value, typed: asTyped(knob, value, question.units) };
    }
  }
  return undefined;
}

/** Of values further and further away the first, and then further ones at growing distances. */
const spreadOut = (values: readonly number[], count: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => values[(i * (i + 1)) / 2]).filter((value) => value !== undefined);

/** Halves the way from where the knob stands, which cannot be built, to a value that can. */
function nearestBuilt(
  knob: Knob,
  built: number,
  { units }: Question,
  builds: (name: string, value: number) => boolean,
): number {
  let [refused, good] = [knob.value, built];
  for (let round = 0; round < 12; round += 1) {
    const middle = onGrid(knob, (refused + good) / 2, units);
    if (middle === undefined || middle === good || middle === refused) break;
    if (builds(knob.name, middle)) good = middle;
    else refused = middle;
  }
  return good;
}
