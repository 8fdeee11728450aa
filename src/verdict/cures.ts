import type { Finding } from '../checks/index.js';
import { canBeBuilt } from '../model/index.js';
import { remembered } from '../remembered.js';
import { toolsOf } from '../shop/index.js';
import { cureKey, knownByData, sameSubjects, worthCuring } from './cure-key.js';
import { asTyped, type Knob, knobs, nudge, onGrid, otherChoices, outwards, shareMoved } from './knobs.js';
import { quickVerdictOf } from './quick-verdict.js';
import { type Question, type Values, type Verdict, verdictOf } from './verdict.js';

/** One dimension or choice that ends a finding, tried by a full verdict. */
export interface Cure {
  /** camelCase name of the parameter. */
  readonly parameter: string;
  /** mm, degrees or a count; of a choice one of its words. */
  readonly value: number | string;
  /** As it is typed: `--rake 8.5deg`. */
  readonly typed: string;
}

/** Full verdicts spent on the cures of one design at most. */
const MOST_VERDICTS = 60;

/** Verdicts spent on words of choices at most. */
const MOST_CHOICES = 24;

/** Verdicts spent on one code of finding once the effect of every dimension is known. */
const MOST_TRIES = 6;

/** Answers kept while one design is asked about. */
const MOST_KEPT = 1000;

/**
 * For every kind of error, and of warning about standing and strength: the one dimension whose change ends all of that kind and
 * starts no other, the given dimensions first, then the least change by its share of the dimension's range.
 *
 * Each dimension is moved a little to see what it does to the measured figure, by the data alone where they know it; the place
 * where the figure meets its limit is worked out from that, and a full verdict there decides. What no size ends is tried with the
 * other words of every choice, a stronger wood among them. A cure is never told that was not tried.
 *
 * @param given camelCase names of the parameters the person gave
 * @param held names of those that are to stay as they are
 * @returns by {@link cureKey}; a kind for which none was found is left out
 */
export async function curesOf(
  question: Question,
  values: Values,
  findings: readonly Finding[],
  given: readonly string[] = [],
  held: readonly string[] = [],
): Promise<ReadonlyMap<string, Cure>> {
  const errors = findings.filter(worthCuring);
  const codes = [...new Set(errors.map(cureKey))];
  const cures = new Map<string, Cure>();
  const byData = knownByData(quickVerdictOf(question, values).findings, errors);
  let spent = 0;
  const built = remembered<Promise<Verdict>>(MOST_KEPT);
  const judge = (name: string, value: number | string) =>
    built(`${name} ${value}`, () => {
      spent += 1;
      return verdictOf(question, { ...values, [name]: value });
    });
  const looked = remembered<Verdict>(MOST_KEPT);
  const look = (name: string, value: number | string) =>
    looked(`${name} ${value}`, () => quickVerdictOf(question, { ...values, [name]: value }));
  /** Whether it ends a code and starts no other; what the data alone see to be there still is not built. */
  const ends = async (name: string, value: number | string, code: string): Promise<boolean> => {
    if (byData.has(code) && !without(look(name, value), code)) return false;
    return cured(await judge(name, value), code, codes);
  };
  const all = free(question, values, given, held);
  for (const group of [all.filter((knob) => knob.given), all.filter((knob) => !knob.given)]) {
    const open = codes.filter((code) => !cures.has(code));
    if (open.length === 0 || spent >= MOST_VERDICTS) break;
    const effects: { knob: Knob; step: number; verdict: Verdict }[] = [];
    for (const knob of group) {
      if (spent >= MOST_VERDICTS) break;
      const step = nudge(knob);
      const moved = knob.value + step;
      const verdict = open.every((code) => byData.has(code))
        ? look(knob.name, moved)
        : await judge(knob.name, moved);
      if (!verdict.refused) effects.push({ knob, step, verdict });
    }
    for (const code of open) {
      // what ends another kind as well is told for both
      const shared = await firstOf(cures.values(), ({ parameter, value }) => ends(parameter, value, code));
      if (shared) {
        cures.set(code, shared);
        continue;
      }
      const ranked = effects
        .flatMap(({ knob, step, verdict }) => {
          const value = meets(knob, step, errors, verdict.findings, code, question.units);
          return value === undefined ? [] : [{ knob, value }];
        })
        .toSorted((a, b) => shareMoved(a.knob, a.value) - shareMoved(b.knob, b.value));
      for (const { knob, value } of ranked.slice(0, MOST_TRIES)) {
        const found = await firstThatCures(knob, value, question, (at) => ends(knob.name, at, code));
        if (found === undefined) continue;
        cures.set(code, { parameter: knob.name, value: found, typed: asTyped(knob, found, question.units) });
        break;
      }
    }
  }
  const choices = otherChoices(question.model, values).filter(({ parameter }) => !held.includes(parameter));
  for (const code of codes.filter((one) => !cures.has(one))) {
    const found = await firstOf(
      choices,
      async ({ parameter, value }) => spent < MOST_VERDICTS + MOST_CHOICES && ends(parameter, value, code),
    );
    if (found) cures.set(code, found);
  }
  return cures;
}

/** The sizes that may be moved. */
const free = (
  { model, shop }: Question,
  values: Values,
  given: readonly string[],
  held: readonly string[],
): readonly Knob[] =>
  knobs(model, model.complete(values, toolsOf(shop)), given).filter(({ name }) => !held.includes(name));

async function firstOf<T>(all: Iterable<T>, holds: (one: T) => Promise<boolean>): Promise<T | undefined> {
  for (const one of all) if (await holds(one)) return one;
  return undefined;
}

const without = ({ findings, refused }: Verdict, code: string): boolean =>
  !refused && findings.every((finding) => !worthCuring(finding) || cureKey(finding) !== code);

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

/**
 * For a design that cannot be built: the one dimension whose change lets it be built and leaves no error, tried by a full
 * verdict; the given dimensions first, then the least change by its share of the dimension's range.
 */
export async function cureOfRefusal(
  question: Question,
  values: Values,
  given: readonly string[] = [],
  held: readonly string[] = [],
): Promise<Cure | undefined> {
  const built = canBeBuilt(question.model, values, toolsOf(question.shop));
  const all = free(question, values, given, held);
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
