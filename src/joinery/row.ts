import { JoinError } from '../errors.js';
import { SAME_POINT } from '../tolerances.js';
import type { Span } from './clear-span.js';
import type { Fit } from './joint.js';
import type { JoinOptions } from './options.js';
import { PRACTICE } from './practice.js';

/** A mortise shorter than its width plus this is a hole, not a mortise. */
const LEAST_RUN = 4;

/** Mortise lengths are rounded down to this: as fine as stops are set by a rule. */
const LENGTH_STEP = 0.5;

/** Mortises of one length in a row; `centres` along the seat's x. */
export interface Row {
  readonly length: number;
  readonly centres: readonly number[];
}

/**
 * Lays mortises out in a row, the outer ones against the insets, shifted as asked.
 *
 * @param room where the wood runs unbroken along the seat, at the mouth and at both bottoms
 * @throws JoinError `no-room` when they do not fit, or the shift takes them out of the room
 */
export function layOut(
  joint: string,
  room: Span,
  of: { readonly inset: number; readonly cutter: number; readonly fit: Fit; readonly thickness: number },
  options: JoinOptions,
): Row {
  const { inset, cutter, fit, thickness } = of;
  const given = options.tenonWidth;
  const web = options.web ?? PRACTICE.web;
  const whole = room.to - room.from;
  const usable = Math.max(whole - 2 * inset, 0);
  const usual = (given ?? PRACTICE.tenonWidth) + fit.edge;
  const count = options.tenons ?? Math.max(1, Math.round((usable + web) / (usual + web)));
  const widest = Math.floor((usable - (count - 1) * web) / count / LENGTH_STEP + SAME_POINT) * LENGTH_STEP;
  const length = given === undefined ? widest : given + fit.edge;
  const mortises = count === 1 ? 'a mortise' : `${count} mortises`;
  // a tenon narrower than it is thick has no cheeks
  const least = Math.max(cutter + (given === undefined ? LEAST_RUN : 0), thickness + fit.edge);
  if (length < least - SAME_POINT) {
    throw new JoinError('no-room', (say) =>
      given === undefined
        ? `joint ${joint}: its seat is ${say.length(whole)} long; with ${say.fine(inset)} kept at each end and ${count === 1 ? '1 tenon' : `${count} tenons`} a mortise would be ${say.length(Math.max(length, 0))} long; allowed is at least ${say.length(least)}: use fewer tenons, a smaller inset, a thinner cutter or wider boards`
        : `joint ${joint}: its tenons are ${say.fine(given)} wide; allowed is at least ${say.fine(least - fit.edge)} for a tenon ${say.fine(thickness)} thick in a mortise ${say.fine(cutter)} wide: make them wider or use a thinner cutter`,
    );
  }
  const needed = count * length + (given === undefined ? (count - 1) * web : 0);
  if (needed > whole + SAME_POINT) {
    throw new JoinError(
      'no-room',
      (say) =>
        `joint ${joint}: ${mortises} of ${say.length(length)} ${count === 1 ? 'needs' : 'need'} ${say.length(needed)} and its seat is ${say.length(whole)} long: use narrower or fewer tenons`,
    );
  }
  // wider than the insets allow: keep them on the seat, the end-inset check speaks
  const spread = count === 1 ? 0 : Math.min(Math.max(usable - length, (count - 1) * length), whole - length);
  const shift = options.shiftAlong ?? 0;
  const most = Math.max((whole - spread - length) / 2, 0);
  if (Math.abs(shift) > most + SAME_POINT) {
    throw new JoinError(
      'no-room',
      (say) =>
        `joint ${joint}: shiftAlong moves ${mortises} by ${say.fine(shift)}; allowed is ${say.fine(most)} each way before they leave the wood: shift less or use narrower tenons`,
    );
  }
  const first = (room.from + room.to) / 2 - spread / 2 + shift;
  const centres = Array.from(
    { length: count },
    (_, i) => first + (count === 1 ? 0 : (spread * i) / (count - 1)),
  );
  return { length, centres };
}
