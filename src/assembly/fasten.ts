import { type ErrorText, JoinError } from '../errors.js';
import { add, cross, directionOut, dot, pointOut, scale, subtract, unit, type Vec3 } from '../frame/index.js';
import { contacts } from '../joinery/index.js';
import { type Season, seasonalMovement } from '../movement/index.js';
import { minimumRectangle } from '../profile/index.js';
import { buttons } from './by-buttons.js';
import { screws } from './by-screws.js';
import type { FastenRequest } from './fastening.js';
import { FASTEN, type Fastened, type Place } from './held-screw.js';
import type { PlacedBoard } from './placed-board.js';

/**
 * Fastens a board to another without glue: a table top on an apron. What its buttons or screws need is cut into both.
 *
 * @param season a heated room and flat-sawn wood when left out
 * @throws JoinError `fasten` when a size does not fit, `no-contact` when the boards do not touch
 * @example fasten(top, apron, { held: 'top', to: 'apron', by: 'button' }).hardware
 */
export function fasten(
  held: PlacedBoard,
  to: PlacedBoard,
  request: FastenRequest,
  season?: Season,
): Fastened {
  const refuse = (text: ErrorText): never => {
    throw new JoinError(
      'fasten',
      (say) => `fastening ${request.held}/${request.to}: ${typeof text === 'string' ? text : text(say)}`,
    );
  };
  for (const name of ['travel', 'screwLength', 'slotBelow', 'slotWidth', 'slotDepth', 'tongue'] as const) {
    const value = request[name];
    if (value !== undefined && !(Number.isFinite(value) && value >= 0))
      refuse(`${name} is ${value}; it must be 0 or more: give a length`);
  }
  const touch = contacts(to, held)[0]!;
  const box = minimumRectangle(touch.patch);
  const middle = pointOut(touch.plane, [box.centre[0], box.centre[1], 0]);
  const run = directionOut(touch.plane, [box.along[0], box.along[1], 0]);
  const up = touch.plane.z;
  const grain = held.place.x;
  if (Math.abs(dot(grain, up)) > Math.SQRT1_2)
    refuse(
      `the end of ${held.board.name} stands against ${to.board.name}, and neither a button nor a screw holds in end grain: hold it by a face or an edge, or join it by tenons`,
    );
  const along = unit(cross(grain, up));
  const count =
    request.count ?? Math.max(2, Math.ceil((box.length - 2 * FASTEN.fromEnd) / FASTEN.spacing) + 1);
  const span = box.length - 2 * Math.min(FASTEN.fromEnd, box.length / 4);
  const places = Array.from({ length: count }, (_, i) =>
    add(middle, scale(run, count === 1 ? 0 : span * (i / (count - 1) - 1 / 2))),
  );
  const made = places.map(
    (place, i): Place => ({
      id: `${request.held}/${request.to}:${i + 1}`,
      place,
      travel: request.travel ?? seasonalMovement(held.board.material, fromMiddle(held, place, along), season),
    }),
  );
  const pieces = { held, to, request, touch, run, up, along, made, refuse };
  return request.by === 'button' ? buttons(pieces) : screws(pieces);
}

/** From the middle of a board's width, along the way it moves. */
const fromMiddle = ({ board, place }: PlacedBoard, at: Vec3, along: Vec3): number => {
  const { length, width, thickness } = board.blank;
  const centre = pointOut(place, [length / 2, width / 2, thickness / 2]);
  return Math.abs(dot(subtract(at, centre), along));
};
