import { exploded } from '../../assembly/index.js';
import { endsShape, type Tenon } from '../../joinery/index.js';
import { trimmed } from '../../length/index.js';
import type { Aid } from '../../shop/index.js';
import { allSolids, boardOf, type Mesh, meshOf, type Solids, tenonBody } from '../../solid/index.js';
import type { OutputFile } from '../folder/index.js';
import { stl } from './stl.js';

/** A board's own file, lying on its reference face. */
const boardStlPath = (board: string): string => `stl/${board}.mm.stl`;

/** Tenons of one size with ends cut alike share a file. */
const tenonKind = (tenon: Tenon): string =>
  [
    `tenon-${[tenon.thickness, tenon.width, tenon.length].map((size) => trimmed(size, 2)).join('x')}`,
    endsShape(tenon),
  ]
    .filter((part) => part !== '')
    .join('-');

/** Every solid as STL: each board in its own frame, each kind of tenon, each piece made to hold the work, the assembly, and the assembly drawn apart. */
export function stlFiles(
  solids: Solids,
  aids: readonly Aid[],
  format: 'binary' | 'ascii',
): readonly OutputFile[] {
  const { design, kernel } = solids;
  const file = (path: string, name: string, mesh: Mesh): OutputFile => ({
    path,
    bytes: stl(name, mesh, format),
  });
  const boards = [...solids.boards.values()].map(({ id, board, own }) =>
    file(boardStlPath(id), board.name, meshOf(own)),
  );
  const kinds = new Map(
    design.joints.flatMap((joint) => joint.tenons.map((tenon): [string, Tenon] => [tenonKind(tenon), tenon])),
  );
  const tenons = [...kinds].map(([kind, tenon]) =>
    file(`stl/${kind}.mm.stl`, kind, meshOf(tenonBody(kernel, tenon))),
  );
  const placed = placedMeshes(solids);
  const apart = exploded(design);
  const drawnApart = placed.map(({ id, mesh }) => shiftedMesh(mesh, apart.get(id) ?? [0, 0, 0]));
  const helpers = aids.map(({ board }) => {
    const body = boardOf(kernel, board);
    return file(`stl/aids/${board.id}.mm.stl`, board.name, meshOf(body));
  });
  return [
    ...boards,
    ...tenons,
    ...helpers,
    file('stl/assembly.mm.stl', `${design.name} assembly`, joinedMesh(placed.map(({ mesh }) => mesh))),
    file('stl/exploded.mm.stl', `${design.name} exploded`, joinedMesh(drawnApart)),
  ];
}

/** Every piece as it stands in the assembly. */
export const placedMeshes = (solids: Solids): readonly { readonly id: string; readonly mesh: Mesh }[] =>
  allSolids(solids).map(({ id, body }) => ({ id, mesh: meshOf(body) }));

function shiftedMesh(mesh: Mesh, by: readonly [number, number, number]): Mesh {
  return { ...mesh, positions: Float64Array.from(mesh.positions, (at, i) => at + by[i % 3]!) };
}

/** Several closed surfaces in one file; each stays closed by itself. */
function joinedMesh(meshes: readonly Mesh[]): Mesh {
  const positions = new Float64Array(meshes.reduce((size, mesh) => size + mesh.positions.length, 0));
  const triangles = new Uint32Array(meshes.reduce((size, mesh) => size + mesh.triangles.length, 0));
  let [corner, triangle] = [0, 0];
  for (const mesh of meshes) {
    positions.set(mesh.positions, corner);
    const first = corner / 3;
    triangles.set(
      mesh.triangles.map((index) => index + first),
      triangle,
    );
    corner += mesh.positions.length;
    triangle += mesh.triangles.length;
  }
  return { positions, triangles };
}
