import { faces, type Groove, type Slot } from '../board/index.js';
import {
  add,
  directionOut,
  dot,
  type Frame,
  frame,
  frameIn,
  frameOut,
  pointOut,
  scale,
  subtract,
  type Vec3,
} from '../frame/index.js';
import { NOISE } from '../tolerances.js';
import { type ButtonSize, buttonPieces } from './button.js';
import type { Fastening } from './fastening.js';
import { type Asked, FASTEN, type Fastened, screwFor, withPilots } from './held-screw.js';

/** Buttons against the face of the board below that looks at the middle of the held one. */
export function buttons(asked: Asked): Fastened {
  const { held, to, request, run, up, along, made, refuse } = asked;
  const side = innerFace(asked);
  const out = side.frame.z;
  const cut = to.board.grooves.find((groove) => groove.face === side.id && runsAlong(groove, to.place, run));
  const reachOf = (at: Vec3) => dot(subtract(made[0]!.place, at), up);
  const below = cut
    ? reachOf(pointOut(to.place, cut.at.origin)) - cut.width / 2
    : (request.slotBelow ?? FASTEN.slotBelow);
  const width = cut?.width ?? request.slotWidth ?? FASTEN.slotWidth;
  const depth = cut?.depth ?? request.slotDepth ?? FASTEN.slotDepth;
  const thickness = width - 2 * FASTEN.air;
  const screw = screwFor(asked, below + thickness);
  const placed = made.map(({ id, place, travel }) => {
    const inward = Math.abs(dot(along, out)) * travel;
    const reach = request.tongue ?? depth - inward / 2 - FASTEN.air;
    if (reach <= 0)
      refuse(
        (say) =>
          `its slot is ${say.fine(depth)} deep and the board moves ${say.fine(inward)} into it, so no tongue is left; the slot must be at least ${say.fine(inward + FASTEN.air + LEAST_TONGUE)} deep: make it deeper`,
      );
    const foot = add(place, scale(out, dot(subtract(side.frame.origin, place), out)));
    const size: ButtonSize = { below, thickness, reach, gap: inward / 2 + FASTEN.air };
    return { id, seat: frame(foot, up, out), travel, size };
  });
  const slots = cut
    ? []
    : placed.map(({ id, seat, travel }): Slot => {
        const origin = pointOut(seat, [0, 0, -below - width / 2]);
        return {
          id: `${id}-slot`,
          face: side.id,
          at: frameIn(to.place, frame(origin, out, run)),
          width,
          length: BUTTON_WIDTH + Math.abs(dot(along, run)) * travel + 2 * FASTEN.air + width,
          depth,
        };
      });
  const pieces = placed.map(({ id, seat, size }) => buttonPieces(id, seat, size, screw));
  return {
    held: withPilots(
      held,
      pieces.map(({ screwAt }, i) => ({ id: placed[i]!.id, at: screwAt })),
      screw,
    ),
    to: { ...to.board, slots: [...to.board.slots, ...slots] },
    fastenings: placed.map(
      ({ id, travel, size: { reach } }, i): Fastening => ({
        id,
        by: 'button',
        held: request.held,
        to: request.to,
        at: pieces[i]!.screwAt,
        along,
        travel,
        screw: { id: `${id}-screw`, diameter: screw.diameter, length: screw.length },
        with: [`${id}-button`],
        tongue: { reach, thickness },
      }),
    ),
    hardware: pieces.flatMap(({ hardware }) => hardware),
  };
}

/** What of a tongue stays in its slot when the board has moved away. Common practice, no source; mm. */
export const LEAST_TONGUE = 4;

/** Width of a button along the apron, mm. */
const BUTTON_WIDTH = 25;

const runsAlong = ({ at }: Groove, place: Frame, run: Vec3): boolean =>
  Math.abs(dot(directionOut(place, at.x), run)) > 1 - NOISE;

/** The face beside the seat, square to it, that looks at the middle of the held board; assembly frame. */
function innerFace({ held, to, touch, run, refuse }: Asked): { id: string; frame: Frame } {
  const { length, width, thickness } = held.board.blank;
  const centre = pointOut(held.place, [length / 2, width / 2, thickness / 2]);
  const beside = faces(to.board)
    .map(({ id, frame: on }) => ({ id, frame: frameOut(to.place, on) }))
    .filter(({ frame: on }) => Math.abs(dot(on.z, touch.plane.z)) < NOISE && Math.abs(dot(on.z, run)) < NOISE)
    .toSorted((p, q) => looks(q.frame) - looks(p.frame));
  function looks(on: Frame): number {
    return dot(on.z, subtract(centre, on.origin));
  }
  return (
    beside[0] ??
    refuse(`${to.board.id} has no face square to its seat for a button to stand against: use screws`)
  );
}
