import { dot, type Frame, type Vec3 } from '../frame/index.js';
import { sheetNames, species, speciesNames } from '../tables/index.js';
import { type Cut, coefficient } from './movement.js';

/** Movement of a wood whose figures are not known, for 1 % of moisture, as a share of the size. Common practice, no source. */
const UNKNOWN_WOOD = 0.0025;

/** Change of a board's size for each 1 % of moisture, as a share of it. */
export interface Strain {
  readonly width: number;
  readonly thickness: number;
}

/**
 * How a board moves: a flat-sawn one has the growth rings along its width, a quarter-sawn one through its thickness. 0 for sheet
 * goods; along the grain nothing moves that counts.
 *
 * @example strainOf('white ash', 'flat') // { width: 0.00274, thickness: 0.00169 }
 */
export function strainOf(material: string, cut: Cut): Strain {
  const key = `${cut} ${material}`;
  const strain = known.get(key) ?? worked(material, cut);
  known.set(key, strain);
  return strain;
}

/** As many as the tables have woods, twice. */
const known = new Map<string, Strain>();

function worked(material: string, cut: Cut): Strain {
  if (sheetNames.includes(material)) return { width: 0, thickness: 0 };
  const of = (way: Cut) =>
    (speciesNames.includes(material) ? coefficient(species(material), way) : undefined) ?? UNKNOWN_WOOD;
  return { width: of(cut), thickness: of(cut === 'flat' ? 'quarter' : 'flat') };
}

/** What a run through a board moves for each 1 %, as a vector; `place` and `run` in one frame, mm. */
export const movedBy = ({ width, thickness }: Strain, { y, z }: Frame, run: Vec3): Vec3 => {
  const [across, through] = [width * dot(run, y), thickness * dot(run, z)];
  return [across * y[0] + through * z[0], across * y[1] + through * z[1], across * y[2] + through * z[2]];
};
