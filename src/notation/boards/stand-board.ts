import { boardOutside } from '../../board/index.js';
import { add, pointOut, scale } from '../../frame/index.js';
import { SAME_DIRECTION } from '../../tolerances.js';
import { type Axis, boxOf, SIDES, type Stood, type Surroundings, useOf } from '../places/index.js';
import { SHAPE_KEYS, shapeBoard } from '../shapes/index.js';
import { atLine, type BoardEntry, onlyKeys, Problem, phraseOf, problemWith } from '../text/index.js';
import { boardOfPose } from './board-of-pose.js';
import { copiesOf, imagesOf } from './images.js';
import type { Pose } from './pose.js';
import { leaningPair, poseBetween } from './pose-between.js';
import { poseLeaning } from './pose-leaning.js';
import { poseUpright, slopedWays } from './pose-upright.js';
import { anglesOf, type Copy, groovedDeep, type ToldBoard, toldBoard } from './told-board.js';

/** Every key a board may have. */
export const BOARD_KEYS: readonly string[] = [
  'grain',
  'face',
  'edge',
  'long',
  'wide',
  'thick',
  'wood',
  'use',
  'when',
  ...Object.keys(SIDES),
  'middle',
  'between',
  'into',
  'grooved',
  'evenly',
  'repeat',
  'like',
  'mirrored',
  'around',
  'leans',
  'head',
  'foot',
  'slopes',
  'plumb',
  'staves',
  ...SHAPE_KEYS,
];

/** A board with all its copies and mirror images, placed and shaped. */
export interface StoodEntry {
  readonly boards: readonly Stood[];
  /** Neighbours that are glued edge to edge into one panel. */
  readonly seams: readonly (readonly [Stood, Stood])[];
}

/**
 * Stands a board of the file, and its copies and images.
 *
 * @param material of a board that tells no wood of its own
 * @throws Problem
 */
export function standBoard(entry: BoardEntry, around: Surroundings, material: string): StoodEntry {
  const { name, keys } = entry;
  onlyKeys(keys, BOARD_KEYS, `board '${name.value}'`);
  if (
    ['piece', 'floor', 'middle'].includes(name.value) ||
    /\b(of|and|to|past|above|below)\b/.test(name.value)
  )
    throw problemWith(
      name,
      `'${name.value}' has a meaning of its own in a place`,
      'call the board something else',
    );
  const count = copiesOf(entry, 'repeat', around) ?? 1;
  const staves = copiesOf(entry, 'staves', around) ?? 1;
  if (staves > 1) unshaped(entry);
  const numbered = keys.has('repeat') || keys.has('around');
  const stood = (n: number, copy: Copy, slice: One['slice']) => {
    const called = [name.value, keys.has('repeat') && copy.n, slice.of > 1 && slice.number + 1];
    const there = numbered ? { ...around, reckon: around.reckon.withCopy(n) } : around;
    return standOne(entry, there, copy, { called: called.filter(Boolean).join(' '), material, slice });
  };
  return Array.from({ length: count }, (_, i): Copy => ({ count, n: i + 1 }))
    .map((copy) =>
      Array.from({ length: staves }, (_, number) =>
        // told by `repeat` and `around` both, n counts what is repeated
        imagesOf(entry, (turn) => stood(count > 1 ? copy.n : turn, copy, { number, of: staves }), around),
      ),
    )
    .reduce<StoodEntry>(
      ({ boards, seams }, slices) => ({
        boards: [...boards, ...slices.flat()],
        seams: [
          ...seams,
          ...slices
            .slice(1)
            .flatMap((images, i) => images.map((image, k) => [slices[i]![k]!, image] as const)),
        ],
      }),
      { boards: [], seams: [] },
    );
}

/** A panel of staves is shaped when it is glued: its boards are told square. */
function unshaped({ keys }: BoardEntry): void {
  for (const key of SHAPE_KEYS) {
    const entry = keys.get(key);
    if (entry)
      throw new Problem(
        entry.at,
        key.length,
        `a panel of staves has no ${key}`,
        'leave staves out: a wide board is glued up from strips anyway',
      );
  }
}

/** What one board is called and made of, and which of the staves of its panel it is. */
interface One {
  readonly called: string;
  readonly material: string;
  readonly slice: { readonly number: number; readonly of: number };
}

/** One of the staves a panel is made of, counted from its left, front or lower edge. */
function slicedPose(pose: Pose, edge: Axis, { number, of }: One['slice']): Pose {
  if (of === 1) return pose;
  const wide = pose.sizes[edge] / of;
  const off = wide * (number + 1 / 2) - pose.sizes[edge] / 2;
  const sizes = pose.sizes.map((size, axis) => (axis === edge ? wide : size)) as unknown as Pose['sizes'];
  return { ...pose, sizes, middle: add(pose.middle, scale(pose.ways[edge], off)) };
}

/** One board where the file tells it. */
function standOne(
  entry: BoardEntry,
  around: Surroundings,
  copy: Copy,
  { called, material, slice }: One,
): Stood {
  const { name, keys } = entry;
  const told = toldBoard(entry, around, copy, material);
  const pose = slicedPose(poseOf(entry, told, around), told.axes.edge, slice);
  const id = called.replace(/\s+/g, '-');
  const named = { id, name: called, material };
  const made = (trims: Parameters<Stood['trimmedBy']>[0]) => boardOfPose(named, pose, told, trims);
  const bare = atLine(name.at, name.value.length, () => made([]));
  const corners = boardOutside(bare.board).corners.map((corner) => pointOut(bare.place, corner));
  return {
    name: called,
    line: name,
    placed: shapeBoard(bare, told.axes, keys, around.reckon),
    corners,
    box: boxOf(corners),
    axes: told.axes,
    panel: panelOf(keys, around),
    use: useOf(keys),
    leans: pose.ways.some((way, axis) => way[axis as Axis] < 1 - SAME_DIRECTION),
    trimmedBy: (trims) => shapeBoard(made(trims), told.axes, keys, around.reckon),
  };
}

/** How a board stands: leaning, sloping, between leaning boards, or square to the piece. */
function poseOf({ name, keys }: BoardEntry, told: ToldBoard, around: Surroundings): Pose {
  const [leans, slopes] = [keys.get('leans'), keys.get('slopes')];
  if (leans && slopes)
    throw new Problem(
      slopes.at,
      6,
      `board '${name.value}' leans and slopes`,
      'write leans for an upright board, slopes for a level one',
    );
  for (const key of ['head', 'foot'] as const) {
    const end = keys.get(key);
    if (end && !leans)
      throw new Problem(
        end.at,
        key.length,
        `only a leaning board has its ${key} told apart`,
        'write leans: { left: 8° } too',
      );
  }
  if (leans) return poseLeaning(told, keys, around, anglesOf(leans, 'leans', around));
  if (slopes) {
    if (told.axes.grain === 2)
      throw new Problem(
        slopes.at,
        6,
        'a board whose grain runs up does not slope',
        'write leans: { left: 8° }',
      );
    return poseUpright(told, slopedWays(anglesOf(slopes, 'slopes', around)));
  }
  const pair = leaningPair(told);
  const plumb = keys.get('plumb');
  return pair
    ? poseBetween(told, pair, plumb !== undefined && around.reckon.yes(phraseOf(plumb, 'plumb')))
    : poseUpright(told);
}

/** Whether it goes into grooves of what it stands between. */
function panelOf(keys: BoardEntry['keys'], around: Surroundings): Stood['panel'] {
  const entry = keys.get('grooved') ?? keys.get('into');
  return entry && { grooved: groovedDeep(keys, around), at: entry.at };
}
