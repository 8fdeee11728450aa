import { scale } from '../frame/index.js';
import type { SectionPlane } from './cap.js';
import type { Point, PreviewData } from './preview-data.js';

/** What the person has chosen to see. */
export interface Choices {
  /** 0: together, 1: drawn apart. */
  readonly apart: number;
  /** Number of the step being looked at; undefined: everything is together. */
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
  readonly mark: Point | undefined;
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
  mark: undefined,
};

/** Air left before a tenon enters, mm; for looking only. */
const AIR = 20;

/** How faint a piece is that comes in a later step, and how thin a board that is seen through. */
const [LATER, THIN] = [0.07, 0.25];

/** Where a piece stands: drawn apart, or part way through a step. */
export function offsetOf(data: PreviewData, { apart, step, along }: Choices, id: string): Point {
  const drawn = data.pieces.find((piece) => piece.id === id)!.apart;
  const [x, y, z] = scale(drawn, apart);
  const now = step === undefined ? undefined : data.steps[step];
  if (!now?.moving.includes(id)) return [x, y, z];
  const back = (1 - along) * (now.travel + AIR);
  const [dx, dy, dz] = now.direction;
  return [x - dx * back, y - dy * back, z - dz * back];
}

/** How solid a piece is drawn: 0 hidden, 1 whole. */
export function opacityOf(data: PreviewData, { step, seeThrough, hidden }: Choices, id: string): number {
  if (hidden.has(id)) return 0;
  const inHand = (from: number, to: number): boolean =>
    data.steps.slice(from, to).some(({ moving, still }) => moving.includes(id) || still.includes(id));
  if (step !== undefined && !inHand(0, step + 1) && inHand(step + 1, data.steps.length)) return LATER;
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
