import type { CaptiveRequest } from '../../assembly/index.js';
import { type Board, faces, withGroove } from '../../board/index.js';
import { type Frame, frameIn, pointOut, type Vec3 } from '../../frame/index.js';
import { ALL_AXES, type Axis, type Box, boxOf, type Stood } from '../places/index.js';
import { atLine, Problem } from '../text/index.js';

/** Air between a panel and the walls of its groove, both faces together. Common practice, no source; mm. */
const FIT = 0.2;

/** Boxes share less where they only touch, mm. */
const SHARED = 0.01;

/**
 * Boards with the grooves that panels sit in, and which panel is held by which boards.
 *
 * @throws Problem for a panel that goes into nothing
 */
export function withPanels(standing: readonly Stood[]): {
  readonly standing: readonly Stood[];
  readonly captives: readonly CaptiveRequest[];
} {
  const boards = new Map(standing.map((one) => [one.name, one]));
  const captives = standing.flatMap((panel): readonly CaptiveRequest[] => {
    const { panel: told } = panel;
    if (!told) return [];
    const holders = standing.filter((one) => one !== panel && !one.panel && overlaps(one.box, panel.box));
    if (holders.length < 2)
      throw new Problem(
        told.at,
        4,
        `panel '${panel.name}' goes into fewer than two boards`,
        'let it stand between two',
      );
    if (told.grooved !== undefined)
      for (const { name } of holders) {
        const holder = boards.get(name)!;
        const board = atLine(told.at, 7, () => grooved(holder, panel, told.grooved!));
        boards.set(name, { ...holder, placed: { ...holder.placed, board } });
      }
    return [{ panel: panel.placed.board.id, in: holders.map(({ placed }) => placed.board.id), fit: FIT }];
  });
  return { standing: standing.map(({ name }) => boards.get(name)!), captives };
}

const overlaps = (a: Box, b: Box): boolean =>
  ALL_AXES.every((axis) => Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]) > SHARED);

/** A board with a groove where a panel's edge goes into it, stopped behind the panel's corners while wood is left there. */
function grooved({ placed }: Stood, panel: Stood, depth: number): Board {
  const { board, place } = placed;
  const seen = boxIn(panel, place);
  const whole = [board.blank.length, board.blank.width, board.blank.thickness];
  const sides = ALL_AXES.flatMap((axis) => [
    { axis, sign: 1 as const, into: whole[axis]! - seen.min[axis] },
    { axis, sign: -1 as const, into: seen.max[axis] },
  ]);
  const { axis, sign } = sides.reduce((least, next) => (next.into < least.into ? next : least));
  const [p, q] = ALL_AXES.filter((one) => one !== axis);
  const reach = (one: Axis) => seen.max[one] - seen.min[one];
  const [thin, run] = reach(p!) < reach(q!) ? [p!, q!] : [q!, p!];
  const width = reach(thin) + FIT;
  const [start, end] = [seen.min[run] - width / 2, whole[run]! - seen.max[run] - width / 2];
  const stop = { ...(start > LEAST_STOP && { start }), ...(end > LEAST_STOP && { end }) };
  const number = board.grooves.length + 1;
  return withGroove(board, {
    id: number === 1 ? 'groove' : `groove-${number}`,
    face: faceToward(board, axis, sign),
    from: faceToward(board, thin, -1),
    distance: seen.min[thin] - FIT / 2,
    width,
    depth,
    ...(Object.keys(stop).length > 0 && { stop }),
  });
}

/** Wood left behind a groove's end that is worth stopping for, mm. Common practice, no source. */
const LEAST_STOP = 6;

const faceToward = (board: Board, axis: Axis, sign: 1 | -1): string =>
  faces(board).reduce((most, next) =>
    next.frame.z[axis] * sign > most.frame.z[axis] * sign + 1e-6 ? next : most,
  ).id;

/** A panel's box seen from another board. */
function boxIn({ placed }: Stood, place: Frame): Box {
  const { length, width, thickness } = placed.board.blank;
  const seen = frameIn(place, placed.place);
  return boxOf(
    [0, length].flatMap((x) =>
      [0, width].flatMap((y) => [0, thickness].map((z): Vec3 => pointOut(seen, [x, y, z]))),
    ),
  );
}
