import { type Board, type Face, type FaceId, faces } from '../../board/index.js';
import { angleDeg, dot, subtract } from '../../frame/index.js';
import { type Profile, rectangle } from '../../profile/index.js';
import { COPLANAR, PARALLEL_DEG, SAME_POINT } from '../../tolerances.js';
import type { Horn } from './horn.js';
import { stagesOf } from './stages.js';

/** A board after a step that shapes it, with no mortise, hole or slot in it. */
export interface BoardState {
  readonly name: 'milled blank' | 'horns off' | 'ends cut' | 'outline cut' | 'bevels cut' | 'openings cut';
  readonly board: Board;
  /** Extra length still on it. */
  readonly horns: readonly Horn[];
  /** Ids of the bevels and openings that the step cuts. */
  readonly cuts: readonly string[];
}

/**
 * The states a board passes through, from the milled blank on; a state that changes nothing is left out.
 *
 * @param horns left on the milled blank; they come off before the ends are cut
 */
export function boardStates(finished: Board, horns: readonly Horn[]): readonly BoardState[] {
  const bare: Board = {
    ...finished,
    mortises: [],
    holes: [],
    slots: [],
    grooves: [],
    bevels: [],
    openings: [],
  };
  const sawn = stagesOf(finished).find(({ name }) => name === 'ends cut')!.board;
  const through = finished.bevels.filter(({ within }) => within === undefined);
  const inside = finished.bevels.filter(({ within }) => within !== undefined);
  const { length, width } = finished.blank;
  const blank = rectangle({ length, width });
  // an angled end takes its horn off with it
  const squareHorns = horns.length === 0 ? [] : squareOnes(horns, sawn);
  const states: BoardState[] = [
    { name: 'milled blank', board: { ...bare, outline: horned(finished, horns) }, horns, cuts: [] },
  ];
  if (squareHorns.length > 0) {
    const left = horns.filter((horn) => !squareHorns.includes(horn));
    states.push({
      name: 'horns off',
      board: { ...bare, outline: horned(finished, left) },
      horns: left,
      cuts: [],
    });
  }
  if (through.length > 0 || !sameOutline(sawn.outline, blank)) {
    const board = { ...bare, outline: sawn.outline, bevels: through };
    states.push({ name: 'ends cut', board, horns: [], cuts: through.map(({ id }) => id) });
  }
  const outlined = { ...bare, outline: finished.outline, bevels: through };
  if (!sameOutline(finished.outline, states.at(-1)!.board.outline))
    states.push({ name: 'outline cut', board: outlined, horns: [], cuts: [] });
  const bevelled = { ...outlined, bevels: finished.bevels };
  if (inside.length > 0)
    states.push({ name: 'bevels cut', board: bevelled, horns: [], cuts: inside.map(({ id }) => id) });
  if (finished.openings.length > 0) {
    const board = { ...bevelled, openings: finished.openings };
    states.push({ name: 'openings cut', board, horns: [], cuts: finished.openings.map(({ id }) => id) });
  }
  return states;
}

/**
 * Names of the flat faces a board has in a state: those of the finished board where they are its faces already, and the
 * reference and opposite faces, edges and ends that are still there. The end of a horn has no name.
 *
 * @param known faces of the finished board
 */
export function facesIn(state: Board, known: readonly Face[]): readonly FaceId[] {
  return faces(state).flatMap(({ id, frame }) => {
    const same = known.find(
      (one) =>
        angleDeg(one.frame.z, frame.z) < PARALLEL_DEG &&
        Math.abs(dot(one.frame.z, subtract(frame.origin, one.frame.origin))) < COPLANAR,
    );
    return same ? [same.id] : /^(reference|opposite)-/.test(id) ? [id] : [];
  });
}

/** The blank with what is left on beyond its ends; the finished ends keep their places. */
function horned(board: Board, horns: readonly Horn[]): Profile {
  const beyond = (end: FaceId) => horns.find((horn) => horn.end === end)?.length ?? 0;
  const { length, width } = board.blank;
  const start = beyond('reference-end');
  return rectangle({ x: -start, y: 0, length: start + length + beyond('opposite-end'), width });
}

/** The horns whose ends stay square. */
function squareOnes(horns: readonly Horn[], sawn: Board): readonly Horn[] {
  const ids = faces(sawn).map(({ id }) => id);
  return horns.filter(({ end }) => ids.includes(end));
}

/** Whether two outlines have the same corners and arcs, wherever they begin. */
function sameOutline(a: Profile, b: Profile): boolean {
  if (a.length !== b.length) return false;
  const near = (p: number, q: number) => Math.abs(p - q) < 100 * SAME_POINT;
  const first = b.findIndex((v) => near(v.x, a[0]!.x) && near(v.y, a[0]!.y));
  return (
    first >= 0 &&
    a.every((v, i) => {
      const w = b[(first + i) % b.length]!;
      return near(v.x, w.x) && near(v.y, w.y) && near(v.bulge, w.bulge);
    })
  );
}
