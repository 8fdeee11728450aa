import { dot, type Frame, frame, pointIn, subtract, type Vec3 } from '../frame/index.js';
import { once } from '../once.js';
import { intersectRegion, type Region, regionArea, type Vertex } from '../profile/index.js';
import { PATCH_MM2, SAME_DIRECTION, SAME_POINT } from '../tolerances.js';
import type { Board, FaceId } from './board.js';
import { onceAShape } from './once-a-shape.js';
import { columnRegion, planeRegion } from './plane-region.js';

/** A flat face of a board: where another board can seat. */
export interface Face {
  readonly id: FaceId;
  /** Against the grain: the wide faces, the long narrow edges, or the ends. */
  readonly grain: 'face' | 'edge' | 'end';
  /** Board frame; z points out of the wood. */
  readonly frame: Frame;
  /** Loops in the frame's x and y, mm. */
  readonly region: Region;
}

/**
 * Every plane a board may have a face in, as if it had one: the wood there is worked out when it is first asked for, and may be
 * next to none.
 */
export const possibleFaces: (board: Board) => readonly Face[] = onceAShape((board) =>
  facePlanes(board).map(({ runs, ...plane }): Face => {
    const region = once(() => {
      const wood = planeRegion(board, plane.frame, columnRegion(board));
      // where the outline turns away from the plane it goes on as a section, which is no face
      return runs && !within(wood, runs) ? intersectRegion(wood, strips(runs, board.blank.thickness)) : wood;
    });
    return {
      ...plane,
      get region() {
        return region();
      },
    };
  }),
);

/** Whether wood lies in its plane. */
export const isFace = ({ region }: Face): boolean => regionArea(region) > PATCH_MM2;

/**
 * The flat faces of a board before any mortise is cut: both wide faces, every straight run of the outline, every bevel.
 * Faces a bevel has taken away altogether are left out.
 */
export const faces: (board: Board) => readonly Face[] = onceAShape((board) =>
  possibleFaces(board).filter(isFace),
);

/**
 * The frame of one face, board frame, z out of the wood.
 *
 * @returns undefined when the board has no such face
 */
export const faceFrame = (board: Board, id: FaceId): Frame | undefined =>
  facePlanes(board).find((plane) => plane.id === id)?.frame;

interface FacePlane extends Omit<Face, 'region'> {
  /** Of an edge or end: where the outline runs in the plane, along its x. */
  readonly runs?: (readonly [from: number, to: number])[];
}

/** Whether all wood of a plane lies beside one run: nothing is to be taken off then. */
const within = (wood: Region, [run, ...more]: NonNullable<FacePlane['runs']>): boolean =>
  more.length === 0 &&
  wood.every((loop) => loop.every(([x]) => x > run![0] - SAME_POINT && x < run![1] + SAME_POINT));

const strips = (runs: NonNullable<FacePlane['runs']>, thickness: number): Region =>
  runs.map(([from, to]) => [
    [from, -thickness],
    [to, -thickness],
    [to, 2 * thickness],
    [from, 2 * thickness],
  ]);

function facePlanes(board: Board): FacePlane[] {
  const planes: FacePlane[] = [
    { id: 'reference-face', grain: 'face', frame: frame([0, 0, 0], [0, 0, -1], [1, 0, 0]) },
    {
      id: 'opposite-face',
      grain: 'face',
      frame: frame([0, 0, board.blank.thickness], [0, 0, 1], [1, 0, 0]),
    },
  ];
  board.outline.forEach((from, i) => {
    const to = board.outline[(i + 1) % board.outline.length]!;
    const run = Math.hypot(to.x - from.x, to.y - from.y);
    if (from.bulge !== 0 || run < SAME_POINT) return;
    const out: Vec3 = [(to.y - from.y) / run, (from.x - to.x) / run, 0];
    // the feet on both sides of an arch are one face
    const same = planes.find((plane) => plane.runs && inPlane(plane.frame, out, from));
    if (same) {
      const start = pointIn(same.frame, [from.x, from.y, 0])[0];
      same.runs!.push([start, start + run]);
      return;
    }
    planes.push({
      id: edgeName(board, from, to, i),
      grain: grainOf(out[0], out[1]),
      frame: frame([from.x, from.y, 0], out, [to.x - from.x, to.y - from.y, 0]),
      runs: [[0, run]],
    });
  });
  for (const bevel of board.bevels) {
    const [nx, ny, nz] = bevel.normal;
    const grain = Math.abs(nz) > Math.max(Math.abs(nx), Math.abs(ny)) ? 'face' : grainOf(nx, ny);
    // x runs level along the bevelled edge
    const level: Vec3 = Math.hypot(nx, ny) > 0 ? [-ny, nx, 0] : [1, 0, 0];
    planes.push({ id: bevel.id, grain, frame: frame(bevel.point, bevel.normal, level) });
  }
  return planes;
}

const inPlane = (plane: Frame, out: Vec3, at: Vertex): boolean =>
  dot(plane.z, out) > 1 - SAME_DIRECTION &&
  Math.abs(dot(plane.z, subtract([at.x, at.y, 0], plane.origin))) < SAME_POINT;

const grainOf = (nx: number, ny: number): 'edge' | 'end' => (looksAlongGrain([nx, ny]) ? 'end' : 'edge');

/** Whether a face is an end rather than an edge, by its normal out of the wood, board frame; a mitre of 45° is an end. */
export const looksAlongGrain = ([x, y]: readonly [
  x: number,
  y: number,
  ...rest: readonly number[],
]): boolean => Math.abs(x) > Math.abs(y) - SAME_POINT;

function edgeName(board: Board, from: Vertex, to: Vertex, index: number): FaceId {
  const { length, width } = board.blank;
  const both = (a: number, b: number, at: number) =>
    Math.abs(a - at) < SAME_POINT && Math.abs(b - at) < SAME_POINT;
  if (both(from.y, to.y, 0)) return 'reference-edge';
  if (both(from.y, to.y, width)) return 'opposite-edge';
  if (both(from.x, to.x, 0)) return 'reference-end';
  if (both(from.x, to.x, length)) return 'opposite-end';
  return `edge-${index + 1}`;
}
