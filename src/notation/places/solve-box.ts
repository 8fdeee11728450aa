import { type Phrase, problemWith } from '../text/index.js';
import { ALL_AXES, AXIS_WORDS, type Axis } from './sides.js';

/** Something told of a board in one direction: where a side or the middle stands. */
export interface Fact {
  readonly kind: 'low' | 'high' | 'middle';
  readonly value: number;
  /** The key, for errors. */
  readonly key: string;
}

/** What is told of a board in one direction. */
export interface AxisTold {
  readonly facts: readonly Fact[];
  /** Of the board along this direction, and the key that told it. */
  readonly size?: { readonly value: number; readonly key: string } | undefined;
  /** What an open direction takes over. */
  readonly like?: { readonly min: number; readonly max: number } | undefined;
  /** Where the middle goes when nothing else says it. */
  readonly fill?: number | undefined;
}

/** A direction worked out: where the middle stands, and the board's size along it. */
export interface Settled {
  readonly middle: number;
  readonly size: number;
}

/** How far a board reaches in one direction for each size it has: half of the sum is the way from middle to side. */
export type Reach = readonly [Axis3, Axis3, Axis3];
type Axis3 = readonly [number, number, number];

export const UPRIGHT: Reach = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/**
 * Works out middles and sizes from what is told: in each direction one side, other side, size and middle give each other, two of them
 * the rest.
 *
 * @param name of the board, for errors
 * @param told by axis; a direction left out is not asked for
 * @param sizeKeys what the size in each direction is called
 * @throws Problem when too little or too much is told
 */
export function solveBox(
  name: Phrase,
  told: ReadonlyMap<Axis, AxisTold>,
  reach: Reach,
  sizeKeys: readonly [string, string, string],
): ReadonlyMap<Axis, Settled> {
  const open = new Map([...told].map(([axis, one]) => [axis, completed(name, axis, one, sizeKeys[axis])]));
  const sizes: (number | undefined)[] = ALL_AXES.map((axis) => told.get(axis)?.size?.value);
  // a size from two sides needs the sizes that reach into that direction: those come first
  const unsized: readonly Axis[] = [...open.keys()].filter((axis) => sizes[axis] === undefined);
  for (let round = 0; round < 3; round += 1) {
    for (const axis of unsized) {
      if (sizes[axis] !== undefined) continue;
      const across = reachWithout(axis, reach, sizes);
      if (across === undefined) continue;
      const { low, high } = sidesOf(open.get(axis)!.facts);
      sizes[axis] = (high! - low! - across) / reach[axis][axis];
    }
  }
  const found = new Map<Axis, Settled>();
  for (const [axis, { facts }] of open) {
    const size = sizes[axis];
    const whole = ALL_AXES.reduce<number>((sum, other) => sum + reach[axis][other] * (sizes[other] ?? 0), 0);
    if (size === undefined)
      throw problemWith(
        name,
        `board '${name.value}' leans, and its ${sizeKeys[axis]} cannot be worked out from its sides`,
        `tell its ${sizeKeys[axis]}`,
      );
    if (!(size > 0))
      throw problemWith(
        name,
        (say) =>
          `board '${name.value}' would be ${say.fine(size)} ${sizeKeys[axis]}: its sides ${AXIS_WORDS[axis]} are crossed or meet`,
        'change what one of them stands at',
      );
    const { low, high, middle } = sidesOf(facts);
    const at =
      middle ??
      (low === undefined ? high! - whole / 2 : high === undefined ? low + whole / 2 : (low + high) / 2);
    found.set(axis, { middle: at, size });
  }
  return found;
}

const sidesOf = (facts: readonly Fact[]) => ({
  low: facts.find(({ kind }) => kind === 'low')?.value,
  high: facts.find(({ kind }) => kind === 'high')?.value,
  middle: facts.find(({ kind }) => kind === 'middle')?.value,
});

/** How far the other sizes reach into a direction; undefined while one of them is unknown. */
function reachWithout(axis: Axis, reach: Reach, sizes: readonly (number | undefined)[]): number | undefined {
  let sum = 0;
  for (const other of ALL_AXES) {
    if (other === axis || reach[axis][other] < 1e-12) continue;
    if (sizes[other] === undefined) return undefined;
    sum += reach[axis][other] * sizes[other]!;
  }
  return sum;
}

/** With what `like` and a middle left open give; exactly two of side, side, middle and size are there then. */
function completed(name: Phrase, axis: Axis, told: AxisTold, sizeKey: string): { facts: readonly Fact[] } {
  const { size, like, fill } = told;
  let { facts } = told;
  const has = () => facts.length + (size ? 1 : 0);
  if (has() > 2) {
    const keys = [...facts.map(({ key }) => key), ...(size ? [size.key] : [])];
    throw problemWith(
      name,
      `board '${name.value}' is told too much ${AXIS_WORDS[axis]}: ${keys.join(', ')}`,
      'leave one out',
    );
  }
  if (like && has() < 2) facts = likeOther(facts, like, size !== undefined);
  if (fill !== undefined && has() < 2 && !facts.some(({ kind }) => kind === 'middle'))
    facts = [...facts, { kind: 'middle', value: fill, key: 'middle' }];
  const lacking = has() < 2 || (size === undefined && facts.some(({ kind }) => kind === 'middle') && !like);
  if (lacking) {
    const sides = (['left and right', 'front and back', 'bottom and top'] as const)[axis];
    const known = [...facts.map(({ key }) => key), ...(size ? [size.key] : [])];
    throw problemWith(
      name,
      `nothing says where board '${name.value}' stands ${AXIS_WORDS[axis]}${known.length > 0 ? `; only its ${known.join(' and ')} is told` : ''}`,
      `two of these are needed: ${sides}, middle, ${sizeKey}; or write 'like: …'`,
    );
  }
  if (size === undefined) facts = bothSides(facts, like);
  return { facts };
}

/** Every direction still open has the other board's extent; with a size it is centred on it. */
function likeOther(
  facts: readonly Fact[],
  { min, max }: { readonly min: number; readonly max: number },
  sized: boolean,
): readonly Fact[] {
  const fact = (kind: Fact['kind'], value: number): Fact => ({ kind, value, key: 'like' });
  const [first] = facts;
  if (sized) return [...facts, fact('middle', (min + max) / 2)];
  if (!first) return [fact('low', min), fact('high', max)];
  if (first.kind === 'middle') return facts;
  return [...facts, first.kind === 'low' ? fact('high', max) : fact('low', min)];
}

/** Side and middle, or a middle and the other board's size, as two sides. */
function bothSides(facts: readonly Fact[], like: AxisTold['like']): readonly Fact[] {
  const { low, high, middle } = sidesOf(facts);
  if (middle === undefined) return facts;
  const half =
    low !== undefined ? middle - low : high !== undefined ? high - middle : (like!.max - like!.min) / 2;
  return [
    { kind: 'low', value: middle - half, key: 'middle' },
    { kind: 'high', value: middle + half, key: 'middle' },
  ];
}
