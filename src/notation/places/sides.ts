import type { Vec3 } from '../../frame/index.js';

/** 0 left to right, 1 front to back, 2 up. */
export type Axis = 0 | 1 | 2;
export const ALL_AXES: readonly Axis[] = [0, 1, 2];

/** A way along an axis: 1 right, back or up; -1 left, front or down. */
export interface Way {
  readonly axis: Axis;
  readonly sign: 1 | -1;
}

/** The six sides of a piece and of every board in it. */
export const SIDES = {
  left: { axis: 0, sign: -1 },
  right: { axis: 0, sign: 1 },
  front: { axis: 1, sign: -1 },
  back: { axis: 1, sign: 1 },
  bottom: { axis: 2, sign: -1 },
  top: { axis: 2, sign: 1 },
} as const satisfies Readonly<Record<string, Way>>;

export type Side = keyof typeof SIDES;

/** The ways a face or edge may look. */
export const LOOKS = {
  left: SIDES.left,
  right: SIDES.right,
  front: SIDES.front,
  back: SIDES.back,
  down: SIDES.bottom,
  up: SIDES.top,
} as const satisfies Readonly<Record<string, Way>>;

export const GRAINS = { 'left-right': 0, 'front-back': 1, up: 2 } as const satisfies Readonly<
  Record<string, Axis>
>;

/** Between which sides a mirror stands. */
export const MIRRORS = { 'left-right': 0, 'front-back': 1, 'up-down': 2 } as const satisfies Readonly<
  Record<string, Axis>
>;

/** The three directions in words of an error. */
export const AXIS_WORDS = ['left-right', 'front-back', 'up-down'] as const;

export const isSide = (word: string): word is Side => Object.hasOwn(SIDES, word);

export const sideOn = (axis: Axis, sign: 1 | -1): Side =>
  (Object.keys(SIDES) as Side[]).find((side) => SIDES[side].axis === axis && SIDES[side].sign === sign)!;

/** The unit vector of a way. @example vectorOf(SIDES.front) // [0, -1, 0] */
export const vectorOf = ({ axis, sign }: Way): Vec3 => [
  axis === 0 ? sign : 0,
  axis === 1 ? sign : 0,
  axis === 2 ? sign : 0,
];
