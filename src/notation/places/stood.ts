import type { PlacedBoard } from '../../assembly/index.js';
import type { Plane, Vec3 } from '../../frame/index.js';
import type { Phrase, Place } from '../text/index.js';
import type { Axis } from './sides.js';
import type { ToldUse } from './use.js';

/** The space something fills, mm, assembly frame. */
export interface Box {
  readonly min: Vec3;
  readonly max: Vec3;
}

/** An end cut to a plane, its normal off the wood. */
export interface Trim {
  readonly plane: Plane;
  readonly id: string;
}

/** A board that has its place; boards below it in the file may name it. */
export interface Stood {
  /** `front left leg` */
  readonly name: string;
  /** The line that tells it, with its copies and images. */
  readonly line: Phrase;
  readonly placed: PlacedBoard;
  /** Of the space it fills before anything but its ends is shaped, and the box round them. */
  readonly corners: readonly Vec3[];
  readonly box: Box;
  /** Which of the three directions its grain, width and thickness run in, nearly or exactly. */
  readonly axes: Axes;
  /** Out of square to the piece. */
  readonly leans: boolean;
  /** A panel that goes into others: how deep its grooves are to be, or that they are told where they are cut. */
  readonly panel?: { readonly grooved: number | undefined; readonly at: Place } | undefined;
  /** What its face that looks up is for. */
  readonly use?: ToldUse | undefined;
  /** The same board with further ends cut: a mitre is sawn before the board is shaped. */
  readonly trimmedBy: (trims: readonly Trim[]) => PlacedBoard;
}

export interface Axes {
  readonly grain: Axis;
  readonly edge: Axis;
  readonly face: Axis;
}

/** The box round several things. */
export const boxAround = (boxes: readonly Box[]): Box => ({
  min: each((i) => Math.min(...boxes.map(({ min }) => min[i]))),
  max: each((i) => Math.max(...boxes.map(({ max }) => max[i]))),
});

/** The box round points. */
export const boxOf = (points: readonly Vec3[]): Box => boxAround(points.map((p) => ({ min: p, max: p })));

const each = (part: (axis: Axis) => number): Vec3 => [part(0), part(1), part(2)];
