import fc from 'fast-check';
import type { Design } from '../../src/assembly/index.js';
import { JoinError } from '../../src/errors.js';
import type { JoinOptions } from '../../src/joinery/index.js';
import { arched, shelves, table } from '../joinery/crowded-designs.js';

const tenths = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 10), max: Math.round(max * 10) }).map((n) => n / 10);

/** A design whose mortises are near each other or lie on several patches, told so that it can be made again. */
export interface Crowd {
  readonly name: string;
  readonly of: object;
  readonly make: () => Design;
}

const options: fc.Arbitrary<JoinOptions> = fc.record(
  {
    cutter: fc.constantFrom(6, 6.35, 8),
    endGap: fc.constantFrom(0.5, 1, 2),
    meet: fc.constantFrom('shorten', 'butt', 'stagger', 'mitre'),
  },
  { requiredKeys: [] },
);

const tables = fc
  .record({
    leg: tenths(38, 70),
    wide: tenths(60, 120),
    thick: tenths(18, 30),
    height: tenths(300, 700),
    setback: tenths(0, 20),
    top: fc.boolean(),
    options,
  })
  .map(({ wide, thick, setback, ...of }): Crowd => {
    const given = {
      ...of,
      apron: [wide, thick] as const,
      setback: Math.min(setback, of.leg - thick),
      length: 600,
      width: 420,
    };
    return { name: 'table', of: given, make: () => table(given) };
  });

const racks = fc
  .record({ thick: tenths(15, 45), deep: tenths(120, 400), swapped: fc.boolean(), options })
  .map(
    // two rows in line have no mitre between them
    ({ options: { meet: _, ...rest }, ...of }): Crowd => {
      const given = { ...of, options: rest };
      return { name: 'shelves', of: given, make: () => shelves(given) };
    },
  );

const sides = fc
  .record({ foot: tenths(45, 110), foot2: tenths(15, 110), thick: tenths(18, 40) })
  .map((of): Crowd => ({ name: 'arched', of, make: () => arched(of) }));

/** Tables with aprons that meet in their legs, shelves opposite each other, sides on two feet. */
export const crowds: fc.Arbitrary<Crowd> = fc.oneof(
  { weight: 3, arbitrary: tables },
  { weight: 2, arbitrary: racks },
  { weight: 2, arbitrary: sides },
);

/** The design, or the refusal of one of its joints; any other error is a fault and is thrown. */
export function crowded({ make }: Crowd): Design | JoinError {
  try {
    return make();
  } catch (error) {
    if (error instanceof JoinError) return error;
    throw error;
  }
}
