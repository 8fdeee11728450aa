import {
  Box3,
  BufferAttribute,
  BufferGeometry,
  Color,
  DoubleSide,
  FrontSide,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
} from 'three';
import { once } from '../../once.js';
import type { PreviewPiece } from '../told/index.js';
import { type Cap, capOf } from './cap.js';
import { withGrain } from './grain.js';
import { type SharpEdge, sharpEdgesOf } from './sharp-edges.js';
import { smoothNormals } from './smooth-normals.js';

/** A piece on the stage. */
export interface ShownPiece {
  readonly piece: PreviewPiece;
  /** Faces, edges and, when it is cut, the cut face; moved as one. */
  readonly group: Group;
  readonly face: MeshLambertMaterial;
  readonly edge: LineBasicMaterial;
  readonly cap: Cap;
  /** Its shape, seen through all that stands before it. */
  readonly glow: Mesh<BufferGeometry, MeshBasicMaterial>;
  readonly own: Color;
  /** Where it stands put together. */
  readonly box: Box3;
  readonly triangles: number;
  /** Its sharp edges put together, found when they are first asked for. */
  readonly sharpEdges: () => readonly SharpEdge[];
  /** Frees what the graphics hold of it. */
  readonly dispose: () => void;
}

/** Whether two pieces are drawn alike. */
export const isSamePiece = (a: PreviewPiece, b: PreviewPiece): boolean =>
  a.colour === b.colour &&
  a.role === b.role &&
  a.wide === b.wide &&
  a.grain === b.grain &&
  a.positions === b.positions &&
  a.triangles === b.triangles &&
  a.edges === b.edges;

/** Inner sides are drawn only where they are seen, through the wood or in a section: they are half the work of a picture. */
export function drawSides(face: MeshLambertMaterial): void {
  const side = face.transparent || face.clippingPlanes?.length ? DoubleSide : FrontSide;
  if (face.side !== side) face.needsUpdate = true;
  face.side = side;
}

/** @param index of the piece: neighbours are hatched different ways */
export function shownPiece(piece: PreviewPiece, index: number): ShownPiece {
  const own = new Color(piece.colour);
  const numbers = (text: string) =>
    piece.wide ? new Uint32Array(bytes(text)) : new Uint16Array(bytes(text));
  const positions = new Float32Array(bytes(piece.positions));
  const triangles = numbers(piece.triangles);
  const face = new MeshLambertMaterial({
    color: own.clone(),
    polygonOffset: true,
    polygonOffsetFactor: 0.6,
    polygonOffsetUnits: 1,
  });
  if (piece.grain && piece.box) withGrain(face, piece.box, index);
  const mesh = new Mesh(facets(positions, triangles), face);
  mesh.userData.id = piece.id;
  const lines = new BufferGeometry();
  lines.setAttribute('position', new BufferAttribute(positions, 3));
  const ends = numbers(piece.edges);
  lines.setIndex(new BufferAttribute(ends, 1));
  const edge = new LineBasicMaterial();
  const cap = capOf(piece, positions, triangles, edge, index);
  const glow = new Mesh(mesh.geometry, new MeshBasicMaterial(THROUGH_WOOD));
  glow.visible = false;
  glow.renderOrder = 1;
  const group = new Group();
  group.add(mesh, new LineSegments(lines, edge), cap.object, glow);
  const box = new Box3().setFromArray(positions);
  const dispose = (): void => {
    for (const one of [mesh.geometry, lines, face, edge, cap, glow.material]) one.dispose();
  };
  const sharpEdges = once(() => sharpEdgesOf(positions, ends));
  return {
    piece,
    group,
    face,
    edge,
    cap,
    glow,
    own,
    box,
    triangles: triangles.length / 3,
    sharpEdges,
    dispose,
  };
}

const THROUGH_WOOD = {
  color: '#e2502f',
  transparent: true,
  opacity: 0.5,
  depthTest: false,
  depthWrite: false,
};

/** Every triangle with its own three corners, for each may have its own normals there. */
function facets(positions: Float32Array, triangles: ArrayLike<number>): BufferGeometry {
  const corners = new Float32Array(3 * triangles.length);
  for (let i = 0; i < triangles.length; i += 1) {
    const from = 3 * triangles[i]!;
    corners.set(positions.subarray(from, from + 3), 3 * i);
  }
  const solid = new BufferGeometry();
  solid.setAttribute('position', new BufferAttribute(corners, 3));
  solid.setAttribute('normal', new BufferAttribute(smoothNormals(positions, triangles), 3));
  return solid;
}

function bytes(base64: string): ArrayBuffer {
  const text = atob(base64);
  const out = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i += 1) out[i] = text.charCodeAt(i);
  return out.buffer;
}
