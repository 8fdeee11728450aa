import { type Colour, colourOf } from '../../drawing/index.js';
import { allSolids, type Mesh, meshOf, type Solid, type Solids } from '../../solid/index.js';
import { joinedCorners } from './joined-corners.js';

/** A piece of the assembly as a file for others holds it. */
export interface Piece {
  readonly id: string;
  readonly name: string;
  readonly colour: Colour;
  /** mm, assembly frame. */
  readonly mesh: Mesh;
}

/** Every piece as it stands in the assembly, named and coloured. */
export const piecesOf = (solids: Solids): readonly Piece[] =>
  allSolids(solids).map((solid) => ({
    id: solid.id,
    name: nameOf(solid),
    colour: colourOf(solid),
    mesh: meshForOthers(solid),
  }));

/** The solid's surface, its corners numbered anew where some were joined. */
function meshForOthers(solid: Solid): Mesh {
  const mesh = meshOf(solid.body);
  const { triangles } = joinedCorners(mesh.positions, mesh.triangles);
  if (triangles === mesh.triangles) return mesh;
  const numbers = new Map<number, number>();
  const positions: number[] = [];
  const renumbered = triangles.map((corner) => {
    const known = numbers.get(corner);
    if (known !== undefined) return known;
    numbers.set(corner, numbers.size);
    positions.push(...mesh.positions.subarray(3 * corner, 3 * corner + 3));
    return numbers.size - 1;
  });
  return { positions: Float64Array.from(positions), triangles: renumbered };
}

const nameOf = (solid: Solid): string => {
  if (solid.kind === 'board') return solid.board.name;
  if (solid.kind === 'tenon') return `tenon ${solid.id}`;
  return `${solid.id.replaceAll('-', ' ')}: ${solid.hardware.name}`;
};
