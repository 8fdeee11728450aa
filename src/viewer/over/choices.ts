import { add, scale } from '../../frame/index.js';
import type { SectionPlane, Spot } from '../piece/index.js';
import type { Point, PreviewData, PreviewFinding, PreviewStep } from '../told/index.js';
import type { Pixel } from './over-sheet.js';

/** What the person has chosen to see. */
export interface Choices {
  /** 0: together, 1: drawn apart. */
  readonly apart: number;
  /** Number of the step being looked at, tenons first; undefined: everything is together. */
  readonly step: number | undefined;
  /** 0: in hand, 1: seated. */
  readonly along: number;
  readonly seeThrough: boolean;
  readonly sizes: boolean;
  /** The line round the feet, and where it tips first. */
  readonly stands: boolean;
  readonly axis: 0 | 1 | 2 | undefined;
  /** Place of the section plane along its axis, a share of the whole. */
  readonly cut: number;
  readonly chosen: ReadonlySet<string>;
  readonly hovered: ReadonlySet<string>;
  readonly hidden: ReadonlySet<string>;
  /** Spots are measured from one to the other. */
  readonly measuring: boolean;
  readonly spots: readonly Spot[];
  /** The spot that is pointed at. */
  readonly aim: Spot | undefined;
  /** Where the cross is that keys move, in the canvas's own pixels. */
  readonly cross: Pixel | undefined;
  /** The place of a finding. */
  readonly place: Pick<PreviewFinding, 'at' | 'gap'> | undefined;
}

export const AT_FIRST: Choices = {
  apart: 0,
  step: undefined,
  along: 1,
  seeThrough: false,
  sizes: false,
  stands: false,
  axis: undefined,
  cut: 0.5,
  chosen: new Set(),
  hovered: new Set(),
  hidden: new Set(),
  measuring: false,
  spots: [],
  aim: undefined,
  cross: undefined,
  place: undefined,
};

/** How thin a board is that is seen through. */
const THIN = 0.25;

/** Every step in its order: tenons into their boards, then boards together. */
export const stepsOf = ({ first, steps }: Pick<PreviewData, 'first' | 'steps'>): readonly PreviewStep[] => [
  ...first,
  ...steps,
];

/** What tells where pieces stand. */
interface Placed extends Pick<PreviewData, 'first' | 'steps'> {
  readonly pieces: readonly { readonly id: string; readonly apart: Point }[];
}

/** Where a piece stands: drawn apart, or part way through a step, the way of each later step still before it. */
export function offsetOf(data: Placed, { apart, step, along }: Choices, id: string): Point {
  if (step === undefined) return scale(data.pieces.find((piece) => piece.id === id)!.apart, apart);
  return stepsOf(data).reduce<Point>(
    (at, { moving, direction, back }, i) => {
      if (i < step || !moving.includes(id)) return at;
      return add(at, scale(direction, (i === step ? along - 1 : -1) * back));
    },
    [0, 0, 0],
  );
}

/** Pieces pointed at, and the tenons that go in: their boards hide most of them. */
export const litOf = ({ first }: PreviewData, { hovered, step }: Choices): ReadonlySet<string> =>
  new Set([...hovered, ...((step !== undefined && first[step]?.moving) || [])]);

/** How solid a piece is drawn: 0 hidden, 1 whole. */
export function opacityOf(data: PreviewData, { seeThrough, hidden }: Choices, id: string): number {
  if (hidden.has(id)) return 0;
  const board = data.pieces.find((piece) => piece.id === id)!.role === 'board';
  return seeThrough && board ? THIN : 1;
}

/** Section planes by the axis they stand square to: what is cut away is on the viewer's side. */
const PLANES: readonly Omit<SectionPlane, 'at'>[] = [
  { normal: [1, 0, 0], u: [0, 1, 0], v: [0, 0, 1] },
  { normal: [0, -1, 0], u: [1, 0, 0], v: [0, 0, 1] },
  { normal: [0, 0, 1], u: [1, 0, 0], v: [0, 1, 0] },
];

/** Where the section plane stands, mm from the side the cut is measured from; undefined for none. */
export function sectionOf(
  data: PreviewData,
  { axis, cut }: Choices,
): (SectionPlane & { place: number }) | undefined {
  if (axis === undefined) return undefined;
  const plane = PLANES[axis]!;
  const place = cut * data.box.sides[axis].mm;
  return { ...plane, place, at: plane.normal[axis]! * (data.box.corner[axis]! + place) };
}
