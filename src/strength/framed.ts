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

/** A joint turns about its shoulder so far from its tenons, mm: it gives along its seat's axes as its turning says. Our own. */
const ARM = 20;

/** The frame on feet that turn freely, its joints rigid or of one stiffness about both axes of their seats, N·mm/rad. */
export function framed({ nodes, bars, joints, feet }: Skeleton, floor: Vec3, stiffness?: number) {
  const along = stiffness === undefined ? 0 : stiffness / ARM ** 2;
  const give: Pick<Tie, 'moves' | 'turns'> | undefined =
    stiffness === undefined
      ? undefined
      : { moves: [along, along, along], turns: [stiffness, stiffness, FIRM[2]] };
  return spaceFrame(nodes, bars, [
    ...joints.map((tie) => (give && tie.turns[0] > 0 ? { ...tie, ...give } : tie)),
    ...feet.map(({ node, at }): Tie => ({ to: node, at, axes: FLOOR_AXES, moves: floor, turns: [0, 0, 0] })),
  ]);
}
