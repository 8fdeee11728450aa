import type { Finding } from '../../checks/index.js';
import { add, eachAxis, scale, type Vec3 } from '../../frame/index.js';
import type { Say } from '../../length/index.js';
import {
  type Body,
  type MortiseMeasure,
  type Solids,
  sharedBox,
  type TenonMeasure,
  thinnestSpot,
} from '../../solid/index.js';
import type { PreviewFinding } from '../../viewer/index.js';

/** However small the place, this much round it is shown, mm. */
export const LEAST_ROUND = 45;

/** A wall is thin, so it is looked at from nearer, mm. */
const WALL_ROUND = 22;

/** What a finding was measured on. */
export interface Measured {
  readonly solids: Solids;
  readonly tenons: readonly TenonMeasure[];
  readonly say: Say;
}

type Place = Pick<PreviewFinding, 'at' | 'round' | 'gap'>;

/** The place a figure was measured at: the thinnest spot of a wall, a tenon's end or its cheeks, what two pieces share. */
export function measuredPlace(measured: Measured, finding: Finding): Place | undefined {
  const { subjects, code } = finding;
  if (code === 'pieces-overlap') return sharedPlace(measured.solids, subjects);
  const tenon = measured.tenons.find((one) => subjects.includes(one.tenon.id));
  const [mortise, ...more] = tenon?.mortises.filter(({ board }) => subjects.includes(board)) ?? [];
  // what is said of both is between them
  if (!tenon || !mortise || more.length > 0) return undefined;
  return (
    (code === 'wall-thin' ? wallPlace(measured, mortise, finding) : undefined) ??
    inMortise(tenon, mortise, ENDS.includes(code) ? 1 : 0.5)
  );
}

/** Figures measured at the end of a tenon; others are its cheeks' or its edges'. */
const ENDS: readonly Finding['code'][] = ['tenon-bottoms-out', 'tenon-end-gap', 'tenon-meets-bottom'];

function wallPlace(
  { solids, say }: Measured,
  mortise: MortiseMeasure,
  { measured }: Finding,
): Place | undefined {
  const spots = thinnestSpot(solids.boards.get(mortise.board)!, mortise);
  if (!spots) return undefined;
  const at = scale(add(spots.from, spots.to), 1 / 2);
  return { at, round: WALL_ROUND, gap: { ...spots, text: say.length(measured) } };
}

/** A point on a tenon's axis in one of its mortises. */
function inMortise({ tenon, joint }: TenonMeasure, { board }: MortiseMeasure, share: number): Place {
  const { place, intoA, intoB, width } = tenon;
  const deep = joint.a === board ? -intoA : intoB;
  const at: Vec3 = add(place.origin, scale(place.z, share * deep));
  return { at, round: Math.max(LEAST_ROUND, width) };
}

function sharedPlace({ boards, tenons, hardware }: Solids, subjects: readonly string[]): Place | undefined {
  const bodies = subjects
    .map((id): Body | undefined => (boards.get(id) ?? tenons.get(id) ?? hardware.get(id))?.body)
    .filter((body) => body !== undefined);
  const [one, other] = bodies;
  if (!one || !other) return undefined;
  const { min, max } = sharedBox(one, other);
  // in the pose that is drawn they may be apart
  if (!min.every((least, i) => least <= max[i]!)) return undefined;
  const half = Math.hypot(...min.map((least, i) => max[i]! - least)) / 2;
  return { at: eachAxis((i) => (min[i] + max[i]) / 2), round: Math.max(LEAST_ROUND, 1.5 * half) };
}
