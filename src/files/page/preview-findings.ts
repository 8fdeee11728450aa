import { type Finding, remedyWords } from '../../checks/index.js';
import { eachAxis } from '../../frame/index.js';
import { type Box, box, type Solids } from '../../solid/index.js';
import { COPLANAR } from '../../tolerances.js';
import type { Point, PreviewFinding } from '../../viewer/index.js';
import { LEAST_ROUND, type Measured, measuredPlace } from './measured-place.js';

/** A finding with the pieces it is about, and the place to look at. */
export function previewFinding(measured: Measured, finding: Finding): PreviewFinding {
  const { solids } = measured;
  const { level, message, basis, subjects, at } = finding;
  const pieces = [...new Set(subjects.flatMap((id) => piecesOf(solids, id)))];
  return {
    level,
    text: message,
    remedy: remedyWords(finding),
    basis,
    pieces,
    ...(measuredPlace(measured, finding) ??
      (at ? { at, round: LEAST_ROUND } : placeOf(solids, subjects, pieces))),
  };
}

/** A subject is a piece, or a joint, which is seen by its tenons. */
function piecesOf({ design, boards, tenons, hardware }: Solids, id: string): readonly string[] {
  if (boards.has(id) || tenons.has(id) || hardware.has(id)) return [id];
  return design.joints.find((joint) => joint.id === id)?.tenons.map((tenon) => tenon.id) ?? [];
}

/** A joint is looked at where its boards touch, pieces where they meet, and a single piece in its middle. */
function placeOf(
  solids: Solids,
  subjects: readonly string[],
  pieces: readonly string[],
): { readonly at: Point; readonly round: number } {
  const joint = solids.design.joints.find(
    ({ id, tenons }) => subjects.includes(id) || tenons.some((tenon) => subjects.includes(tenon.id)),
  );
  const boxes = pieces.map((id) =>
    box((solids.boards.get(id) ?? solids.tenons.get(id) ?? solids.hardware.get(id))!.body),
  );
  const tenon = pieces.map((id) => solids.tenons.get(id)).find((found) => found !== undefined);
  if (tenon && subjects.includes(tenon.id)) return around(box(tenon.body));
  if (joint) {
    const widest = Math.max(0, ...joint.tenons.map(({ width }) => width));
    return { at: joint.seat.origin, round: Math.max(LEAST_ROUND, 1.5 * widest) };
  }
  const [first = wholeOf(solids), ...others] = boxes;
  return around(others.reduce((common, one) => inBothBoxes(common, one) ?? common, first));
}

const wholeOf = ({ boards }: Solids): Box => {
  const all = [...boards.values()].map(({ body }) => box(body));
  const end = (side: 'min' | 'max', pick: (...of: number[]) => number) =>
    eachAxis((i) => pick(...all.map((one) => one[side][i])));
  return { min: end('min', Math.min), max: end('max', Math.max) };
};

function around({ min, max }: Box): { readonly at: Point; readonly round: number } {
  const at = eachAxis((i) => (min[i] + max[i]) / 2);
  const half = Math.hypot(...min.map((least, i) => max[i]! - least)) / 2;
  return { at, round: Math.max(LEAST_ROUND, 1.1 * half) };
}

function inBothBoxes(one: Box, other: Box): Box | undefined {
  const min = eachAxis((i) => Math.max(one.min[i], other.min[i]));
  const max = eachAxis((i) => Math.min(one.max[i], other.max[i]));
  // boards that touch may be apart by the last digits of settled figures
  return min.every((least, i) => least <= max[i]! + COPLANAR) ? { min, max } : undefined;
}
