import {
  add,
  dot,
  type Frame,
  frame,
  pointIn,
  pointOut,
  scale,
  subtract,
  type Vec2,
  type Vec3,
} from '../frame/index.js';
import {
  area,
  intersectRegion,
  type Profile,
  perimeter,
  type Region,
  regionArea,
  regionOf,
} from '../profile/index.js';
import { CUTTER_LEAD, SAGITTA } from '../tolerances.js';
import type { Board, Groove } from './board.js';
import { faceFrame } from './faces.js';
import { columnRegion, planeRegion } from './plane-region.js';
import type { ExpectedVolume } from './volume.js';

/**
 * The outline of a groove in its own X and Y, mm: straight walls, a half circle at an end that stops.
 *
 * @param beyond how far open ends run out of the board
 */
export function grooveOutline(groove: Groove, beyond: number): Profile {
  const r = groove.width / 2;
  const end = (name: 'start' | 'end') =>
    groove.stopped.includes(name) ? groove.length / 2 - r : groove.length / 2 + beyond;
  const [start, stop] = [-end('start'), end('end')];
  const bulge = (name: 'start' | 'end') => (groove.stopped.includes(name) ? 1 : 0);
  const low = -r - (groove.rebate === -1 ? CUTTER_LEAD : 0);
  const high = r + (groove.rebate === 1 ? CUTTER_LEAD : 0);
  return [
    { x: start, y: low, bulge: 0 },
    { x: stop, y: low, bulge: bulge('end') },
    { x: stop, y: high, bulge: 0 },
    { x: start, y: high, bulge: bulge('start') },
  ];
}

/** Far enough to leave the board from any face, mm. */
const pastBoard = ({ blank: { length, width, thickness } }: Board): number =>
  Math.hypot(length, width, thickness) + CUTTER_LEAD;

/** What a groove takes out of a board that nothing else has been cut into, from data with true arcs; mm³. */
export function grooveVolume(board: Board, groove: Groove): ExpectedVolume {
  const mouth = grooveOutline(groove, pastBoard(board));
  const facets = regionOf(mouth);
  const column = columnRegion(board);
  // at most a quadratic of the depth between flat faces: Simpson's rule is exact
  const level = (depth: number) => {
    const plane = { ...groove.at, origin: pointOut(groove.at, [0, 0, -depth]) };
    return regionArea(intersectRegion(planeRegion(board, plane, column), facets));
  };
  const { depth } = groove;
  // a face's own plane is looked at just inside the wood
  const [top, middle, floor] = [level(1e-6), level(depth / 2), level(depth)];
  const round = Math.abs(area(mouth)) - regionArea(facets);
  return {
    volume: (depth / 6) * (top + 4 * middle + floor) + round * depth,
    allowance: (groove.stopped.length === 0 ? 0 : perimeter(mouth) * SAGITTA * depth) + 0.01,
  };
}

/** What two grooves into one face share, mm³, in wood as thick as both are deep. */
export function sharedByGrooves(board: Board, one: Groove, other: Groove): number {
  if (one.face !== other.face) return 0;
  const mouth = (groove: Groove) => regionOf(grooveOutline(groove, pastBoard(board)));
  const shared = intersectRegion(mouth(one), seenIn(other.at, one.at, mouth(other)));
  const plane = { ...one.at, origin: pointOut(one.at, [0, 0, -1e-6]) };
  return regionArea(intersectRegion(planeRegion(board, plane), shared)) * Math.min(one.depth, other.depth);
}

/** How far the near wall of a groove stands from the face its fence follows, square to the groove, mm; 0 for a rebate along it. */
export function fenceDistance(board: Board, groove: Groove): number {
  const line = fenceLine(board, groove);
  return pointIn(line, groove.at.origin)[1] - groove.width / 2;
}

/**
 * Where a face and the face a fence follows meet: x runs along both, y over the face into the wood, z out of it. Board frame.
 *
 * @returns undefined when one of them is not there, or they do not meet at an angle
 */
export function meetingLine(board: Board, face: string, from: string): Frame | undefined {
  const [on, along] = [faceFrame(board, face), faceFrame(board, from)];
  if (!on || !along) return undefined;
  const rise = dot(along.z, on.z);
  if (Math.abs(rise) > MEET) return undefined;
  const inward = scale(subtract(along.z, scale(on.z, rise)), -1);
  const size = Math.hypot(...inward);
  const across = scale(inward, 1 / size);
  const way = dot(along.z, subtract(along.origin, on.origin)) / dot(along.z, across);
  const foot = add(on.origin, scale(across, way));
  const x: Vec3 = [
    across[1] * on.z[2] - across[2] * on.z[1],
    across[2] * on.z[0] - across[0] * on.z[2],
    across[0] * on.z[1] - across[1] * on.z[0],
  ];
  return frame(foot, on.z, x);
}

function fenceLine(board: Board, groove: Groove): Frame {
  const line = meetingLine(board, groove.face, groove.from);
  if (!line) throw new RangeError(`groove ${groove.id} of ${board.id} follows no face`);
  return line;
}

/** Cosine of the angle between two faces whose edge a fence can follow: 45° off square. */
const MEET = Math.SQRT1_2;

/** A region of one frame in the X and Y of another in the same plane, its loops still counter-clockwise. */
export const seenIn = (from: Frame, to: Frame, region: Region): Region =>
  region.map((loop) =>
    loop.map(([x, y]): Vec2 => {
      const p = pointIn(to, pointOut(from, [x, y, 0]));
      return [p[0], p[1]];
    }),
  );
