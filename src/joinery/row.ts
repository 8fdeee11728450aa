import { type ErrorText, JoinError } from '../errors.js';
import { COPLANAR, SAME_POINT } from '../tolerances.js';
import type { Span } from './clear-span.js';
import type { Fit } from './joint.js';
import { PRACTICE } from './practice.js';

/** A mortise shorter than its width plus this is a hole, not a mortise. */
const LEAST_RUN = 4;

/** Mortise lengths are rounded down to this: as fine as stops are set by a rule. */
export const LENGTH_STEP = 0.5;

/** Mortises of one length in a row; `centres` along the seat's x. */
export interface Row {
  readonly length: number;
  readonly centres: readonly number[];
}

/** What a row is laid out by; lengths square to the mortises' axis, mm. */
export interface RowRequest {
  readonly cutter: number;
  readonly fit: Fit;
  /** Of the tenons. */
  readonly thickness: number;
  /** Wood kept at the ends of the room, and between two mortises. */
  readonly inset: number;
  readonly web: number;
  readonly count?: number | undefined;
  /** Of each tenon. */
  readonly width?: number | undefined;
  readonly spacing?: number | undefined;
  /** From the middle of the seat. */
  readonly places?: readonly number[] | undefined;
  readonly shift: number;
  /** Edge-glued boards: tenons only line them up. */
  readonly seam: boolean;
  /** Leave every second place to the joint this one is staggered with, the first or the second of each two. */
  readonly turn?: 0 | 1 | undefined;
}

/** How many mortises, how long, and from the middle of the first to that of the last. */
interface Spread {
  readonly count: number;
  readonly length: number;
  readonly spread: number;
}

/**
 * Lays mortises out in a row: the outer ones against the insets, or at a spacing or places asked for, shifted as asked.
 *
 * @param room where the wood runs unbroken along the seat, at the mouth and at both bottoms
 * @throws JoinError `no-room` when they do not fit, or the shift takes them out of the room
 */
export function layOut(joint: string, room: Span, of: RowRequest): Row {
  if (of.places) return atPlaces(joint, room, of, of.places);
  const whole = room.to - room.from;
  const { count, length, spread } = spreadOf(whole, of);
  const { inset, cutter, fit, thickness, width: given } = of;
  const refuse = (text: ErrorText): never => refused(joint, text);
  const mortises = count === 1 ? 'a mortise' : `${count} mortises`;
  const least = leastLength(of);
  const tooShort = (seat: string, kept: string, long: string, needed: string) =>
    `its seat is ${seat} long; with ${kept} kept at each end and ${count === 1 ? '1 tenon' : `${count} tenons`} a mortise would be ${long} long; it must be at least ${needed}: ${count === 1 ? 'keep' : 'use fewer tenons, keep'} less wood at each end, or use a thinner cutter or wider boards`;
  if (length < least - SAME_POINT) {
    refuse((say) =>
      given === undefined
        ? tooShort(say.length(whole), say.fine(inset), ...say.lengths(Math.max(length, 0), least))
        : `its tenons are ${say.fine(given)} wide; they must be at least ${say.fine(least - fit.edge)}, being ${say.fine(thickness)} thick for a mortise ${say.fine(cutter)} wide: make them wider or use a thinner cutter`,
    );
  }
  const needed = Math.max(spread + length, count * length);
  if (needed > whole + SAME_POINT) {
    refuse(
      (say) =>
        `${mortises} of ${say.length(length)} ${count === 1 ? 'needs' : 'need'} ${say.lengths(needed, whole)[0]}, and its seat is only ${say.lengths(needed, whole)[1]} long: use narrower or fewer tenons${of.spacing === undefined ? '' : ', or less spacing'}`,
    );
  }
  const most = Math.max((whole - spread - length) / 2, 0);
  if (Math.abs(of.shift) > most + SAME_POINT) {
    refuse(
      (say) =>
        `the shift along its seat moves ${mortises} by ${say.fines(of.shift, most)[0]}; beyond ${say.fines(of.shift, most)[1]} either way they leave the wood: shift less or use narrower tenons`,
    );
  }
  const first = (room.from + room.to) / 2 - spread / 2 + of.shift;
  const centres = Array.from(
    { length: count },
    (_, i) => first + (count === 1 ? 0 : (spread * i) / (count - 1)),
  );
  return { length, centres: centres.filter((_, i) => of.turn === undefined || i % 2 === of.turn) };
}

function spreadOf(whole: number, of: RowRequest): Spread {
  const usable = Math.max(whole - 2 * of.inset, 0);
  const usual = (of.width ?? PRACTICE.tenonWidth) + of.fit.edge;
  if (of.spacing !== undefined) {
    const length =
      of.width === undefined ? lengthWithin(Math.min(usual, of.spacing - of.web, usable)) : usual;
    const fitting = Math.floor((usable - length + COPLANAR) / of.spacing) + 1;
    const count = of.count ?? Math.max(1, fitting);
    return { count, length, spread: (count - 1) * of.spacing };
  }
  if (of.seam && of.turn === undefined) {
    const count = of.count ?? Math.max(1, Math.round(whole / PRACTICE.seamSpacing));
    const spread = (whole * (count - 1)) / count;
    // a short seam is laid out like any other seat
    if (spread + usual <= usable && (count > 1 || usable > 2 * usual))
      return { count, length: usual, spread };
  }
  const each = of.turn === undefined ? 1 : 2;
  const asked = of.count ?? Math.max(1, Math.round((usable + of.web) / (each * (usual + of.web))));
  const count = each * asked;
  const length = of.width === undefined ? lengthWithin((usable - (count - 1) * of.web) / count) : usual;
  // wider than the insets allow: keep them on the seat, the end-inset check speaks
  const spread = count === 1 ? 0 : Math.min(Math.max(usable - length, (count - 1) * length), whole - length);
  return { count, length, spread };
}

function atPlaces(joint: string, room: Span, of: RowRequest, places: readonly number[]): Row {
  const centres = places.map((place) => place + of.shift).toSorted((a, b) => a - b);
  const gaps = centres.slice(1).map((centre, i) => centre - centres[i]!);
  const ends = Math.min(centres[0]! - room.from, room.to - centres.at(-1)!);
  const widest = lengthWithin(Math.min(2 * (ends - of.inset), ...gaps.map((gap) => gap - of.web)));
  const length =
    of.width === undefined
      ? Math.min(widest, lengthWithin(PRACTICE.tenonWidth + of.fit.edge))
      : of.width + of.fit.edge;
  const least = leastLength(of);
  if (length < least - SAME_POINT || length > Math.min(2 * ends, ...gaps) + SAME_POINT) {
    refused(
      joint,
      (say) =>
        `at the places given its mortises have room to be ${say.lengths(Math.max(widest, 0), of.width === undefined ? least : length)[0]} long; they must be at least ${say.lengths(Math.max(widest, 0), of.width === undefined ? least : length)[1]}: move the places apart and away from the ends of the seat, which runs from ${say.length(room.from)} to ${say.length(room.to)}`,
    );
  }
  return { length, centres };
}

/** A length is rounded down to the step; one that falls short of a step by rounding noise is that step. */
const lengthWithin = (room: number): number => Math.floor((room + COPLANAR) / LENGTH_STEP) * LENGTH_STEP;

/** A tenon narrower than it is thick has no cheeks. */
const leastLength = ({ cutter, width, thickness, fit }: RowRequest): number =>
  Math.max(cutter + (width === undefined ? LEAST_RUN : 0), thickness + fit.edge);

function refused(joint: string, text: ErrorText): never {
  throw new JoinError('no-room', (say) => `joint ${joint}: ${typeof text === 'string' ? text : text(say)}`);
}
