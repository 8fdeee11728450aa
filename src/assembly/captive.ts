import type { Board, Groove } from '../board/index.js';
import { JoinError } from '../errors.js';
import { type Frame, frameIn, frameOut, pointOut } from '../frame/index.js';
import { type Season, seasonalMovement } from '../movement/index.js';
import { SAME_POINT } from '../tolerances.js';
import type { PlacedBoard } from './placed-board.js';

/** A panel to be held in grooves, not glued; lengths mm. */
export interface CaptiveRequest {
  readonly panel: string;
  /** The boards whose grooves hold it, by id. */
  readonly in: readonly string[];
  /**
   * Room across the panel's grain, both sides together; what the panel's width moves in a year when left out, see
   * {@link seasonalMovement}.
   */
  readonly slack?: number;
  /** Room along the grain, both ends together; 1 when left out. */
  readonly endSlack?: number;
  /** Air between the panel and the walls of its grooves, both faces together; 0.2 when left out. */
  readonly fit?: number;
}

/** A panel held captive in grooves of other boards; lengths mm. */
export interface Captive extends Required<Omit<CaptiveRequest, 'in'>> {
  readonly grooves: readonly { readonly board: string; readonly groove: string }[];
}

/** Common practice, no source; mm. */
const END_SLACK = 1;
const FIT = 0.2;

/**
 * Finds the groove of each board that a panel sits in.
 *
 * @param season a heated room and flat-sawn wood when left out
 * @throws JoinError `captive` when a board is not there, or has no groove that the panel reaches into
 */
export function captiveOf(
  request: CaptiveRequest,
  standing: ReadonlyMap<string, PlacedBoard>,
  season?: Season,
): Captive {
  const refuse = (text: string): never => {
    throw new JoinError('captive', `panel ${request.panel}: ${text}`);
  };
  const named = (id: string) =>
    standing.get(id) ??
    refuse(`there is no board ${id}; boards are ${[...standing.keys()].join(', ')}: name one of them`);
  const panel = named(request.panel);
  for (const name of ['slack', 'endSlack', 'fit'] as const) {
    const value = request[name];
    if (value !== undefined && !(Number.isFinite(value) && value >= 0))
      refuse(`its ${name} is ${value}; it must be 0 or more: give a length`);
  }
  if (request.in.length < 2) refuse('one groove cannot hold a panel: name two or more boards in `in`');
  const { material, blank } = panel.board;
  return {
    panel: request.panel,
    grooves: request.in.map((id) => {
      const board = named(id);
      const groove = board.board.grooves
        .map((one) => ({ id: one.id, engaged: engagedIn(one, board, panel) }))
        .filter(({ engaged }) => engaged > SAME_POINT)
        .toSorted((a, b) => b.engaged - a.engaged)[0];
      return {
        board: id,
        groove:
          groove?.id ??
          refuse(
            `no groove of ${id} holds its edge: cut a groove there with withGroove, or make the panel larger`,
          ),
      };
    }),
    slack: request.slack ?? seasonalMovement(material, blank.width, season),
    endSlack: request.endSlack ?? END_SLACK,
    fit: request.fit ?? FIT,
  };
}

/** How deep a panel's blank stands in a groove; 0 beside it. */
function engagedIn({ at, length, width, depth }: Groove, holder: PlacedBoard, panel: PlacedBoard): number {
  const box = boxIn(panel.board, frameIn(frameOut(holder.place, at), panel.place));
  const beside = Math.max(
    box.min[0]! - length / 2,
    -length / 2 - box.max[0]!,
    box.min[1]! - width / 2,
    -width / 2 - box.max[1]!,
  );
  return beside > -SAME_POINT || box.max[2]! < 0 || box.min[2]! < -depth - width ? 0 : -box.min[2]!;
}

/** The box round a board's blank, seen from a frame the board stands in. */
function boxIn({ blank: { length, width, thickness } }: Board, place: Frame) {
  const corners = [0, length].flatMap((x) =>
    [0, width].flatMap((y) => [0, thickness].map((z) => pointOut(place, [x, y, z]))),
  );
  const of = (pick: (...values: number[]) => number) =>
    [0, 1, 2].map((i) => pick(...corners.map((corner) => corner[i]!)));
  return { min: of(Math.min), max: of(Math.max) };
}
