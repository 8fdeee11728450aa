import type { Vec3 } from '../frame/index.js';
import { type FrameLoad, spaceFrame, type Tie } from '../statics/index.js';
import type { Load } from './load.js';
import { FIRM, type Skeleton } from './skeleton.js';
import type { UsedSurface } from './used-surface.js';

/** A push sideways on the frame. */
export interface Push {
  readonly load: Load;
  readonly surface: UsedSurface;
  readonly loads: readonly [FrameLoad];
}

const FLOOR_AXES: Tie['axes'] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** The frame on feet that turn freely, its joints rigid or of one stiffness about both axes of their seats, N·mm/rad. */
export function framed({ nodes, bars, joints, feet }: Skeleton, floor: Vec3, stiffness?: number) {
  const give: Vec3 | undefined = stiffness === undefined ? undefined : [stiffness, stiffness, FIRM[2]];
  return spaceFrame(nodes, bars, [
    ...joints.map((tie) => (give && tie.turns[0] > 0 ? { ...tie, turns: give } : tie)),
    ...feet.map(({ node, at }): Tie => ({ to: node, at, axes: FLOOR_AXES, moves: floor, turns: [0, 0, 0] })),
  ]);
}
