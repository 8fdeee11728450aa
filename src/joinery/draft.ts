import type { Face } from '../board/index.js';
import { type ErrorText, JoinError } from '../errors.js';
import { directionIn, dot, type Frame, scale, settledPlace, type Vec2 } from '../frame/index.js';
import { USUAL_SEASON } from '../movement/index.js';
import { convexHull, minimumRectangle, type Region, rectangleAlong } from '../profile/index.js';
import { speciesNames } from '../tables/index.js';
import { ALONG_AXIS, NOISE, PARALLEL_DEG } from '../tolerances.js';
import { type Lean, leanOf } from './axis.js';
import { type Contact, type Joinable, planeAlong, regionIn } from './contact.js';
import { edgeOfTenon, SWELL_SPARE, swelling } from './edge-clearance.js';
import type { Fit } from './joint.js';
import type { JoinOptions } from './options.js';
import { PRACTICE } from './practice.js';
import { type Side, sideOf } from './side.js';

/** What is settled of a joint before its mortises get their places. mm. */
export interface Draft {
  readonly id: string;
  readonly options: JoinOptions;
  readonly seat: Frame;
  /** Where the boards touch, in the seat's x and y, and the rectangle round it: along the mortises and across. */
  readonly patch: Region;
  readonly length: number;
  readonly width: number;
  readonly areaMm2: number;
  readonly lean: Lean;
  readonly sides: readonly [a: Side, b: Side];
  readonly thinner: number;
  /** Where neither edge clearance nor tenon width was given, that at the edges is the usual one: a wide tenon gets more. */
  readonly fit: Fit;
  /** How much a tenon grows as a share of its width, and what is kept beyond that, mm. */
  readonly swells: { readonly share: number; readonly spare: number };
  readonly tenonWood?: string;
  readonly cutter: number;
  readonly thickness: number;
  readonly rows: 1 | 2;
  readonly inset: number;
  readonly web: number;
  /** Long edges glued together: tenons only line the boards up. */
  readonly seam: boolean;
}

/** Cutters most shops have, mm. Common practice, no source. */
const USUAL_CUTTERS: readonly number[] = [6, 8, 10, 12];

/** @throws JoinError `no-room` when cutter and clearances leave no tenon, `axis-lean` */
export function draftOf(id: string, a: Joinable, b: Joinable, touch: Contact, options: JoinOptions): Draft {
  const { seat, patch, size } = seatOf(a, b, touch, options);
  const lean = leanOf(id, options.axis, seat, [a.place.x, b.place.x]);
  const sides = [
    sideOf('a', a.board, a.place, touch.faceA, seat, lean.axis),
    sideOf('b', b.board, b.place, touch.faceB, seat, lean.axis),
  ] as const;
  const thinner = Math.min(a.board.blank.thickness, b.board.blank.thickness);
  const rows = options.rows === 2 ? 2 : 1;
  const seam =
    sides.every(({ face }) => face.grain === 'edge') && Math.abs(dot(a.place.x, b.place.x)) > ALONG;
  const tenonWood =
    options.tenonWood ??
    sides.map(({ board }) => board.material).find((material) => speciesNames.includes(material));
  const swells = {
    share: swelling(sides, seat.x, options.season ?? USUAL_SEASON, tenonWood),
    // in a seam they only line the boards up
    spare: seam ? 0 : SWELL_SPARE,
  };
  const fit: Fit = {
    cheek: options.cheekClearance ?? PRACTICE.cheekClearance,
    edge: options.edgeClearance ?? edgeOfTenon(options.tenonWidth ?? 0, swells.share, swells.spare),
    end: options.endGap ?? PRACTICE.endGap,
  };
  const cutter = options.cutter ?? nearest(options.cutters ?? USUAL_CUTTERS, thinner * tenonShare(rows));
  return {
    id,
    options,
    seat,
    patch,
    ...size,
    areaMm2: touch.areaMm2,
    lean,
    sides,
    thinner,
    fit,
    swells,
    ...(tenonWood !== undefined && { tenonWood }),
    cutter,
    thickness: tenonThickness(id, options, cutter, fit),
    rows,
    inset: options.endInset ?? PRACTICE.endInset,
    web: options.web ?? PRACTICE.web,
    seam,
  };
}

/** Cosine between the grains of two boards that are glued edge to edge. */
const ALONG = Math.cos((PARALLEL_DEG * Math.PI) / 180);

/** Tenon thickness as a share of the thinner board: a wall, a tenon, a wall; with two rows a wall, a tenon and a wall more. */
export const tenonShare = (rows: number): number => (3 * PRACTICE.tenonShare) / (2 * rows + 1);

function tenonThickness(id: string, options: JoinOptions, cutter: number, fit: Fit): number {
  const thickness = options.tenonThickness ?? cutter - 2 * fit.cheek;
  if (thickness <= 0) {
    return refuse(
      id,
      (say) =>
        `a ${say.fine(cutter)} cutter with ${say.fine(fit.cheek)} of clearance at each cheek leaves no tenon: use a wider cutter or less clearance`,
    );
  }
  if (thickness > cutter) {
    return refuse(
      id,
      (say) =>
        `its tenon is ${say.fines(thickness, cutter)[0]} thick, and the cutter makes a mortise ${say.fines(thickness, cutter)[1]} wide: use a wider cutter or a thinner tenon`,
    );
  }
  return thickness;
}

/** @throws JoinError `no-room` */
export function refuse(joint: string, text: ErrorText): never {
  throw new JoinError('no-room', (say) => `joint ${joint}: ${typeof text === 'string' ? text : text(say)}`);
}

/** The seat on a patch: its origin in the middle, x along the mortises. */
function seatOf(
  a: Joinable,
  b: Joinable,
  { plane, patch, faceA, faceB }: Contact,
  options: JoinOptions,
): { seat: Frame; patch: Region; size: { length: number; width: number } } {
  const edgeOf = ({ place }: Joinable, face: Face): Vec2 => {
    const along = directionIn(plane, face.grain === 'end' ? place.y : place.x);
    return [along[0], along[1]];
  };
  const edges = { [a.board.id]: edgeOf(a, faceA), [b.board.id]: edgeOf(b, faceB) };
  const preferred = edges[faceB.grain === 'end' && faceA.grain !== 'end' ? b.board.id : a.board.id]!;
  const box =
    options.along === undefined
      ? minimumRectangle(patch, preferred)
      : rectangleAlong(convexHull(patch.flat()), edges[options.along]!);
  const along = settledDirection(box.along);
  const across: Vec2 = [-along[1], along[0]];
  const centre: Vec2 = [settledPlace(box.centre[0]), settledPlace(box.centre[1])];
  const seat = readable(planeAlong(plane, centre, options.turned ? across : along));
  const [long, wide] = options.turned ? [box.width, box.length] : [box.length, box.width];
  return { seat, patch: regionIn(plane, seat, patch), size: { length: long, width: wide } };
}

/** A direction along an axis but for rounding of the patch's corners runs along it. */
const settledDirection = ([x, y]: Vec2): Vec2 =>
  Math.abs(x) < ALONG_AXIS ? [0, Math.sign(y)] : Math.abs(y) < ALONG_AXIS ? [Math.sign(x), 0] : [x, y];

/** The seat with x to the right, away or up rather than the other way: two hands of a piece read alike. */
function readable(seat: Frame): Frame {
  const largest = seat.x.reduce((best, part) => (Math.abs(part) > Math.abs(best) + NOISE ? part : best), 0);
  return largest < 0 ? { ...seat, x: scale(seat.x, -1), y: scale(seat.y, -1) } : seat;
}

const nearest = (sizes: readonly number[], wanted: number): number =>
  sizes.reduce((best, size) => (Math.abs(size - wanted) < Math.abs(best - wanted) ? size : best));
