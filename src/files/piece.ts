import { type Colour, colourOf } from '../drawing/index.js';
import { allSolids, type Mesh, meshOf, type Solid, type Solids } from '../solid/index.js';

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
    mesh: meshOf(solid.body),
  }));

const nameOf = (solid: Solid): string => {
  if (solid.kind === 'board') return solid.board.name;
  if (solid.kind === 'tenon') return `tenon ${solid.id}`;
  return `${solid.id.replaceAll('-', ' ')}: ${solid.hardware.name}`;
};
