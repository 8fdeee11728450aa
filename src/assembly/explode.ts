import { add, scale, subtract, type Vec3 } from '../frame/index.js';
import type { Design } from './design.js';

/** Air left beyond a drawn-out tenon, mm; for looking only. */
const AIR = 25;

/** Sweeps over the joints; each halves the error of a short chain, and a picture needs no more. */
const SWEEPS = 200;

/**
 * How far each piece is moved for the exploded view, mm, assembly frame.
 *
 * Boards move apart along their joints' axes: each joint wishes its boards a tenon's length and some air apart, and the
 * wishes round a closed ring are balanced by least squares. A tenon rests half way between its boards. What the design
 * itself says about a piece goes first.
 */
export function exploded(design: Design): ReadonlyMap<string, Vec3> {
  const still: Vec3 = [0, 0, 0];
  const shifts = new Map<string, Vec3>(design.boards.map(({ board }) => [board.id, still]));
  const wishes = design.joints.map((joint) => ({
    a: joint.a,
    b: joint.b,
    apart: scale(
      joint.tenons[0]?.place.z ?? joint.seat.z,
      Math.max(...joint.tenons.map((tenon) => tenon.length)) + AIR,
    ),
  }));
  const byBoard = new Map<string, { other: string; apart: Vec3 }[]>();
  for (const { a, b, apart } of wishes) {
    byBoard.set(a, [...(byBoard.get(a) ?? []), { other: b, apart: scale(apart, -1) }]);
    byBoard.set(b, [...(byBoard.get(b) ?? []), { other: a, apart }]);
  }
  const root = design.boards[0]?.board.id;
  for (let sweep = 0; sweep < SWEEPS && wishes.length > 0; sweep += 1) {
    let largest = 0;
    for (const [id, sides] of byBoard) {
      if (id === root) continue;
      const sum = sides.reduce((total, side) => add(total, add(shifts.get(side.other)!, side.apart)), still);
      const next = scale(sum, 1 / sides.length);
      largest = Math.max(largest, ...subtract(next, shifts.get(id)!).map(Math.abs));
      shifts.set(id, next);
    }
    if (largest < 0.1) break;
  }
  for (const joint of design.joints) {
    const middle = scale(add(shifts.get(joint.a)!, shifts.get(joint.b)!), 1 / 2);
    for (const tenon of joint.tenons) shifts.set(tenon.id, middle);
  }
  for (const piece of design.hardware) shifts.set(piece.id, still);
  for (const [id, shift] of Object.entries(design.explode ?? {})) shifts.set(id, shift);
  return shifts;
}
