import { faces, type Slot } from '../board/index.js';
import { dot, frame, frameIn, frameOut, subtract } from '../frame/index.js';
import { NOISE } from '../tolerances.js';
import type { Fastening } from './fastening.js';
import { type Asked, FASTEN, type Fastened, screwFor, withPilots } from './held-screw.js';
import { screwPieces } from './wood-screw.js';

/** Screws through slotted holes. */
export function screws(asked: Asked): Fastened {
  const { held, to, request, touch, up, along, made, refuse } = asked;
  const under = faces(to.board)
    .map(({ id, frame: on }) => ({ id, frame: frameOut(to.place, on) }))
    .find(({ frame: on }) => dot(on.z, up) < -1 + NOISE);
  if (!under) return refuse(`${to.board.id} has no face below its seat for a screw's head: use buttons`);
  const through = dot(subtract(touch.plane.origin, under.frame.origin), up);
  if (through > FASTEN.thickest)
    refuse(
      (say) =>
        `its screws would go through ${say.lengths(through, FASTEN.thickest)[0]} of wood; ${say.lengths(through, FASTEN.thickest)[1]} is the most: fasten it with buttons, or to a cleat`,
    );
  const screw = screwFor(asked, through + 1);
  const placed = made.map(({ id, place, travel }) => ({ id, at: frame(place, up, along), travel }));
  const slots = placed.map(
    ({ id, at, travel }): Slot => ({
      id: `${id}-slot`,
      face: touch.faceA.id,
      at: frameIn(to.place, at),
      width: screw.clearance,
      length: screw.clearance + travel + 2 * FASTEN.air,
      depth: 'through',
    }),
  );
  const pieces = placed.map(({ id, at }) => screwPieces(id, at, through, screw));
  return {
    held: withPilots(held, placed, screw),
    to: { ...to.board, slots: [...to.board.slots, ...slots] },
    fastenings: placed.map(
      ({ id, at, travel }): Fastening => ({
        id,
        by: 'screw',
        held: request.held,
        to: request.to,
        at,
        along,
        travel,
        screw: { id: `${id}-screw`, diameter: screw.diameter, length: screw.length },
        with: [`${id}-washer`],
      }),
    ),
    hardware: pieces.flat(),
  };
}
