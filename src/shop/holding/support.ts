import { type Board, makeBoard } from '../../board/index.js';
import { cross, type Frame, frame, frameOut, scale, type Vec2, type Vec3, WORLD } from '../../frame/index.js';
import { intersectRegion, polygon, type Region, regionBounds } from '../../profile/index.js';
import { PARALLEL_DEG, SAME_POINT } from '../../tolerances.js';
import { SUPPORT_WIDTH } from '../practice/index.js';
import type { Work } from './work-at-stage.js';

/** Blocks are made in lengths of this, so that both sides often share one. */
const LENGTH_STEP = 10;

/** A block that cannot lie against an edge stands off it by this, mm. */
const CLEAR = 0.5;

/** Where a plate lacks wood under it, in the mortise's frame. */
export type SupportSide = 'start' | 'end' | 'near' | 'far';

/** A block that stands beside the work, flush with the mouth; mm. */
export interface SupportBlock {
  readonly side: SupportSide;
  /** Away from the work, along its shorter edge. */
  readonly length: number;
  readonly height: number;
  /** Across the mortise for a block at an end of it, along the mortise for one beside it. */
  readonly thickness: number;
  /** How much longer one of its wide edges is than the other, so that it lies against a leaning edge. */
  readonly rise: number;
  /** Block frame written in the mortise's frame. */
  readonly place: Frame;
  /** What its top covers, in the mortise's x and y. */
  readonly top: readonly Vec2[];
}

/** The strip a block stands in, in y for an end of the mortise and in x beside it, and how far out it must reach from the centre. */
export interface SupportWish {
  readonly from: number;
  readonly to: number;
  readonly reach: number;
  readonly height: number;
}

/**
 * The block as a board: x away from the work, y up, the longer of its two edges at y = 0. One that is thicker than high is
 * sawn from a board lying flat: its grain runs along the strip, and a leaning end becomes a bevelled edge.
 */
export function supportBoard(id: string, block: SupportBlock, material: string): Board {
  const { length, rise, height, thickness } = block;
  if (liesFlat(block)) {
    const slant = Math.hypot(rise, height);
    return makeBoard({
      id,
      material,
      blank: { length: thickness, width: length + rise, thickness: height },
      bevels:
        rise < SAME_POINT
          ? []
          : [{ id: 'lean', point: [0, 0, 0], normal: [0, -height / slant, rise / slant] }],
    });
  }
  return makeBoard({
    id,
    material,
    blank: { length: length + rise, width: height, thickness },
    outline: polygon([
      { x: 0, y: 0 },
      { x: length + rise, y: 0 },
      { x: length + rise, y: height },
      { x: rise, y: height },
    ]),
  });
}

const liesFlat = ({ thickness, height }: Pick<SupportBlock, 'thickness' | 'height'>): boolean =>
  thickness > height + SAME_POINT;

/**
 * The support block on one side of the work: it lies against the edge there when that leans in the block's own plane, and
 * stands clear of it otherwise.
 */
export function supportBlock(work: Work, side: SupportSide, wish: SupportWish): SupportBlock {
  const out = outwards(side);
  const across = cross(WORLD.z, out);
  const sameWay = across[0] + across[1] > 0;
  const [from, to] = sameWay ? [wish.from, wish.to] : [-wish.to, -wish.from];
  // the wood in the strip, as distances outwards, at a depth
  const edgeAt = (wood: Region): number => {
    const seen = wood.map((loop) =>
      loop.map(([x, y]): Vec2 => [x * out[0] + y * out[1], x * across[0] + y * across[1]]),
    );
    const strip = stripOf(from, to);
    const found = regionBounds(intersectRegion(seen, [strip])).maxX;
    return Number.isFinite(found) ? found : 0;
  };
  const top = edgeAt(work.mouth);
  const slope = edgeSlope(work, out, across, top, wish.height);
  const depths = [0.5, wish.height / 2, wish.height - 0.5].map((depth) =>
    edgeAt(work.section({ ...WORLD, origin: [0, 0, -depth] })),
  );
  const rise = Math.abs(slope ?? 0) * wish.height;
  const innerTop = slope === undefined ? Math.max(top, ...depths) + CLEAR : top;
  // a leaning edge that comes out below needs the block's longer edge on top
  const turned = (slope ?? 0) > 0;
  const y = turned ? scale(WORLD.z, -1) : WORLD.z;
  const z = cross(out, y);
  const length = LENGTH_STEP * Math.max(Math.ceil((wish.reach - innerTop) / LENGTH_STEP), 1);
  const innerLong = turned ? innerTop : innerTop + (slope ?? 0) * wish.height;
  const thickness = Math.round((to - from) * 1e6) / 1e6;
  const atAcross = z[0] * across[0] + z[1] * across[1] > 0 ? from : to;
  const origin: Vec3 = [
    out[0] * innerLong + across[0] * atAcross,
    out[1] * innerLong + across[1] * atAcross,
    turned ? 0 : -wish.height,
  ];
  const outer = innerLong + length + rise;
  const corner = (o: number, a: number): Vec2 => [out[0] * o + across[0] * a, out[1] * o + across[1] * a];
  return {
    side,
    length,
    height: wish.height,
    thickness,
    rise,
    place: liesFlat({ thickness, height: wish.height }) ? frame(origin, y, z) : frame(origin, z, out),
    top: [corner(innerTop, from), corner(outer, from), corner(outer, to), corner(innerTop, to)],
  };
}

/** The block's place on the board. */
export const supportPlace = (at: Frame, block: SupportBlock): Frame => frameOut(at, block.place);

/** How a face of the board that ends it at the mouth leans outwards per mm of depth; undefined when none lies in the block's plane. */
function edgeSlope(work: Work, out: Vec3, across: Vec3, top: number, height: number): number | undefined {
  for (const { normal, offset, fromTheSide } of work.faces) {
    const outward = normal[0] * out[0] + normal[1] * out[1];
    const sideways = normal[0] * across[0] + normal[1] * across[1];
    if (outward < 0.5 || Math.abs(sideways) > Math.sin((PARALLEL_DEG * Math.PI) / 180)) continue;
    if (Math.abs(offset / outward - top) > 1000 * SAME_POINT) continue;
    const deep = -Math.min(...fromTheSide.flat().map(([, z]) => z));
    if (deep < height - 1000 * SAME_POINT) continue;
    return normal[2] / outward;
  }
  return undefined;
}

function outwards(side: SupportSide): Vec3 {
  if (side === 'start') return [-1, 0, 0];
  if (side === 'end') return [1, 0, 0];
  return side === 'near' ? [0, -1, 0] : [0, 1, 0];
}

function stripOf(from: number, to: number): readonly Vec2[] {
  const far = 1e5;
  return [
    [-far, from],
    [far, from],
    [far, to],
    [-far, to],
  ];
}

/** A block that no rail measures stands this far to both sides of the cutter. */
export const FREE_STRIP = { from: -SUPPORT_WIDTH / 2, to: SUPPORT_WIDTH / 2 } as const;
