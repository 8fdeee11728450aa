import { type Frame, frame, type Vec3 } from '../frame/index.js';
import { type Region, regionArea, type Vertex } from '../profile/index.js';
import { PATCH_MM2, SAME_POINT } from '../tolerances.js';
import type { Board, FaceId } from './board.js';
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
 * The flat faces of a board before any mortise is cut: both wide faces, every straight run of the outline, every bevel.
 * Faces a bevel has taken away altogether are left out.
 */
export function faces(board: Board): readonly Face[] {
  const column = columnRegion(board);
  return facePlanes(board)
    .map((plane): Face => {
      const region = planeRegion(board, plane.frame, column);
      return { ...plane, region };
    })
    .filter((face) => regionArea(face.region) > PATCH_MM2);
}

/**
 * The frame of one face, board frame, z out of the wood.
 *
 * @returns undefined when the board has no such face
 */
export const faceFrame = (board: Board, id: FaceId): Frame | undefined =>
  facePlanes(board).find((plane) => plane.id === id)?.frame;

function facePlanes(board: Board): Omit<Face, 'region'>[] {
  const planes: Omit<Face, 'region'>[] = [
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
    const id = edgeName(board, from, to, i);
    // the feet on both sides of an arch are one face
    if (planes.some((plane) => plane.id === id)) return;
    planes.push({
      id,
      grain: Math.abs(out[0]) > Math.SQRT1_2 ? 'end' : 'edge',
      frame: frame([from.x, from.y, 0], out, [to.x - from.x, to.y - from.y, 0]),
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

const grainOf = (nx: number, ny: number): 'edge' | 'end' => (Math.abs(nx) > Math.abs(ny) ? 'end' : 'edge');

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
