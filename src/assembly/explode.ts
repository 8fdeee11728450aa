import { add, dot, scale, subtract, type Vec3 } from '../frame/index.js';
import { SAME_POINT } from '../tolerances.js';
import type { Design } from './design.js';
import { blankMiddle } from './placed-board.js';

/** Air left beyond a drawn-out tenon, mm; for looking only. */
const AIR = 25;

/** How far what is fastened without glue is lifted off, mm; for looking only. */
const FASTENED = 120;

/** Sweeps over the joints; each halves the error of a short chain, and a picture needs no more. */
const SWEEPS = 200;

/**
 * How far each piece is moved for the exploded view, mm, assembly frame.
 *
 * Boards move apart along their joints' axes: each joint wishes its boards a tenon's length and some air apart, and the
 * wishes round a closed ring are balanced by least squares. A tenon rests half way between its boards, and so do the pieces
 * of a fastening; a panel stands in the middle of what holds it. Boards joined to nothing of the first piece fly off it,
 * square to their wide face. What the design itself says about a piece goes first.
 *
 * @param air left beyond a drawn-out tenon, mm
 */
export function exploded(design: Design, air = AIR): ReadonlyMap<string, Vec3> {
  const still: Vec3 = [0, 0, 0];
  const shifts = new Map<string, Vec3>(design.boards.map(({ board }) => [board.id, still]));
  const wishes = design.joints.map((joint) => ({
    a: joint.a,
    b: joint.b,
    apart: scale(
      joint.tenons[0]?.place.z ?? joint.seat.z,
      Math.max(...joint.tenons.map((tenon) => tenon.length)) + air,
    ),
  }));
  const held = (design.fastenings ?? []).map(({ held: b, to: a, at }) => ({
    a,
    b,
    apart: scale(at.z, FASTENED),
  }));
  wishes.push(...held);
  const byBoard = new Map(design.boards.map(({ board }): [string, Wish[]] => [board.id, []]));
  for (const { a, b, apart } of wishes) {
    byBoard.get(a)!.push({ other: b, apart: scale(apart, -1) });
    byBoard.get(b)!.push({ other: a, apart });
  }
  const root = design.boards[0]?.board.id;
  for (let sweep = 0; sweep < SWEEPS && wishes.length > 0; sweep += 1) {
    let largest = 0;
    for (const [id, sides] of byBoard) {
      if (id === root || sides.length === 0) continue;
      const sum = sides.reduce((total, side) => add(total, add(shifts.get(side.other)!, side.apart)), still);
      const next = scale(sum, 1 / sides.length);
      largest = Math.max(largest, ...subtract(next, shifts.get(id)!).map(Math.abs));
      shifts.set(id, next);
    }
    if (largest < 0.1) break;
  }
  for (const [id, away] of flights(design, byBoard)) shifts.set(id, add(shifts.get(id)!, away));
  for (const joint of design.joints) {
    const middle = scale(add(shifts.get(joint.a)!, shifts.get(joint.b)!), 1 / 2);
    for (const tenon of joint.tenons) shifts.set(tenon.id, middle);
  }
  for (const piece of design.hardware) shifts.set(piece.id, still);
  // a panel stands amid what holds it, drawn out of each groove as far as its frame is apart
  for (const { panel, grooves } of design.captives ?? []) {
    const around = grooves.map(({ board }) => shifts.get(board)!);
    shifts.set(
      panel,
      scale(
        around.reduce((sum, shift) => add(sum, shift), still),
        1 / around.length,
      ),
    );
  }
  for (const { held: id, to, screw, with: others } of design.fastenings ?? []) {
    const middle = scale(add(shifts.get(id)!, shifts.get(to)!), 1 / 2);
    for (const piece of [screw.id, ...others]) shifts.set(piece, middle);
  }
  for (const [id, shift] of Object.entries(design.explode ?? {})) shifts.set(id, shift);
  return shifts;
}

/** Where a board wishes to be: so far from another. */
interface Wish {
  readonly other: string;
  readonly apart: Vec3;
}

/**
 * How far the boards fly that no joint leads to from the first board: each piece of them as a whole, square to the wide face
 * of its first board, away from the middle of the rest.
 */
function flights(design: Design, byBoard: ReadonlyMap<string, readonly Wish[]>): ReadonlyMap<string, Vec3> {
  const found = new Map<string, Vec3>();
  const reached = new Set<string>();
  const centre = mean(design.boards.map(blankMiddle));
  for (const first of design.boards) {
    if (reached.has(first.board.id)) continue;
    const piece = new Set([first.board.id]);
    for (const id of piece) for (const { other } of byBoard.get(id)!) piece.add(other);
    const isMain = reached.size === 0;
    for (const id of piece) reached.add(id);
    if (isMain) continue;
    const { z } = first.place;
    const side = dot(subtract(blankMiddle(first), centre), z) < -SAME_POINT ? -1 : 1;
    const away = scale(z, side * (first.board.blank.thickness + AIR));
    for (const id of piece) found.set(id, away);
  }
  return found;
}

const mean = (points: readonly Vec3[]): Vec3 =>
  scale(
    points.reduce<Vec3>((sum, point) => add(sum, point), [0, 0, 0]),
    1 / points.length,
  );
