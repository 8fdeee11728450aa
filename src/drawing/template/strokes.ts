import { settledFigure, type Vec2 } from '../../frame/index.js';
import type { Profile } from '../../profile/index.js';
import type { CircleEntity, Dashing, Layer, LineEntity, ProfileEntity, TextEntity } from './template.js';

/** Height of the capitals beside a feature and in the list below the part, mm. */
export const LETTER = 4;

/** Mean width of a letter for each mm of a capital's height, in a plain sans-serif: a row of small letters, a row of capitals. */
export const LETTER_WIDTH = 0.65;
export const CAPITAL_WIDTH = 0.95;

/** How far a mark reaches past what it marks, mm. */
export const OVERRUN = 5;

/** Nothing for a whole line: an absent key, so that equal lines are equal data. */
const dashed = (dashing: Dashing | undefined) => (dashing === undefined ? {} : { dashing });

export const closed = (layer: Layer, profile: Profile, dashing?: Dashing): ProfileEntity => ({
  layer,
  kind: 'profile',
  profile,
  ...dashed(dashing),
});

export const ring = (layer: Layer, centre: Vec2, diameter: number, dashing?: Dashing): CircleEntity => ({
  layer,
  kind: 'circle',
  centre,
  radius: diameter / 2,
  ...dashed(dashing),
});

export const line = (layer: Layer, from: Vec2, to: Vec2, dashing?: Dashing): LineEntity => ({
  layer,
  kind: 'line',
  from,
  to,
  ...dashed(dashing),
});

/** How what enters a face is drawn: the template lies on the opposite face, so the reference face is the far side. */
export const dashingOf = (face: string): Dashing | undefined =>
  face === 'reference-face' ? 'far' : undefined;

/** Words beside the part. */
export const legend = (at: Vec2, text: string, height = LETTER): TextEntity => ({
  ...words(at, text, height),
  layer: 'LEGEND',
});

/** Words in the part. */
export const words = (at: Vec2, text: string, height = LETTER, rotationDeg = 0): TextEntity => ({
  layer: 'NOTE',
  kind: 'text',
  at,
  height,
  text,
  rotationDeg,
});

/** The point at `along` and `aside` from an origin, in a direction of the plane and the direction left of it. */
export const from = (origin: Vec2, direction: Vec2, along: number, aside = 0): Vec2 => [
  origin[0] + direction[0] * along - direction[1] * aside,
  origin[1] + direction[1] * along + direction[0] * aside,
];

/** The unit direction of a vector's part in the plane; X when it has none. */
export function inPlane(vector: readonly [number, number, number]): Vec2 {
  const size = Math.hypot(vector[0], vector[1]);
  return size > 0 ? [vector[0] / size, vector[1] / size] : [1, 0];
}

/** Angle of a direction, degrees, turned so that letters along it are never upside down: above -90, at most 90. */
export function readingDeg([x, y]: Vec2): number {
  const deg = settledFigure((Math.atan2(y, x) * 180) / Math.PI);
  if (deg > 90) return deg - 180;
  return deg <= -90 ? deg + 180 : deg;
}
