import {
  add,
  angleDeg,
  cross,
  dot,
  type Frame,
  scale,
  subtract,
  unit,
  type Vec2,
  type Vec3,
} from '../frame/index.js';
import { SAME_DIRECTION, SAME_POINT } from '../tolerances.js';
import type { Laid, Mitre } from './layout.js';
import { placesOf } from './parts.js';
import { PRACTICE } from './practice.js';
import { LENGTH_STEP } from './row.js';

/** The tenons of a joint as they enter one board: `into` runs into that board, `y` through the thickness. */
interface Entering {
  readonly place: Frame;
  readonly into: Vec3;
  readonly thickness: number;
}

/**
 * How the tenons of two joints that cross in a board are mitred.
 *
 * Seen along their width both are strips that cross. The mitre runs from where their near cheeks cross to where their far
 * cheeks cross, and each end stays half the gap off it.
 *
 * @param which the board they meet in, of each joint: 0 its a, 1 its b
 * @returns undefined when their widths do not run the same way, or they meet at less than 60°
 */
export function mitred(
  one: Laid,
  whichOfOne: 0 | 1,
  other: Laid,
  whichOfOther: 0 | 1,
): readonly [Mitre, Mitre] | undefined {
  if (one.draft.rows > 1 || other.draft.rows > 1) return undefined;
  const [p, q] = [entering(one, whichOfOne), entering(other, whichOfOther)];
  const angle = angleDeg(p.into, q.into);
  if (angle < PRACTICE.leastMitre || angle > 180 - PRACTICE.leastMitre) return undefined;
  const normal = unit(cross(p.into, q.into));
  if (![p, q].every(({ place }) => Math.abs(dot(place.x, normal)) > 1 - SAME_DIRECTION)) return undefined;
  // the near cheek of each is the one on the side the other comes from
  const [near, far] = [crossing(p, -1, q, -1), crossing(p, 1, q, 1)];
  const gap = Math.max(one.draft.fit.end, other.draft.fit.end);
  const end = (entered: Entering, mate: Entering, meets: string, i: 0 | 1): Mitre | undefined => {
    const run = far[i] - near[i];
    // half the gap, square to the mitre, is more along the tenon
    const back = ((gap / 2) * Math.hypot(run, entered.thickness)) / entered.thickness;
    const [laid, which] = i === 0 ? ([one, whichOfOne] as const) : ([other, whichOfOther] as const);
    const { fit, options, sides } = laid.draft;
    const isTold = options.depths?.[sides[which].board.id] !== undefined;
    // in a mortise whose depth is told the whole end stays farther back
    const into = Math.min(far[i] - back, isTold ? laid.depths[which] - fit.end : Number.POSITIVE_INFINITY);
    if (run <= 0 || into <= run) return undefined;
    // a mortise deeper than the cutter at hand cuts cannot be made
    const deep = Math.ceil((into + fit.end) / LENGTH_STEP - SAME_POINT) * LENGTH_STEP;
    if (!isTold && deep > (options.deepest ?? Number.POSITIVE_INFINITY)) return undefined;
    return {
      angleDeg: (Math.atan2(run, entered.thickness) * 180) / Math.PI,
      long: dot(entered.place.y, mate.into) > 0 ? 1 : -1,
      meets,
      gap,
      into,
    };
  };
  const ends = [end(p, q, other.draft.id, 0), end(q, p, one.draft.id, 1)] as const;
  return ends[0] && ends[1] ? [ends[0], ends[1]] : undefined;
}

function entering(laid: Laid, which: 0 | 1): Entering {
  const place = placesOf(laid)[0]!;
  return { place, into: which === 0 ? scale(place.z, -1) : place.z, thickness: laid.draft.thickness };
}

/** How deep in each tenon a cheek of one crosses a cheek of the other: 1 the far cheek, -1 the near one. */
function crossing(p: Entering, ofP: 1 | -1, q: Entering, ofQ: 1 | -1): Vec2 {
  const cheek = (one: Entering, mate: Entering, side: 1 | -1): Vec3 =>
    scale(one.place.y, (side * Math.sign(dot(one.place.y, mate.into)) * one.thickness) / 2);
  const a = add(p.place.origin, cheek(p, q, ofP));
  const b = add(q.place.origin, cheek(q, p, ofQ));
  const between = subtract(b, a);
  // the other's cheek is met where the way along one is used up across it
  const along = (way: Vec3, across: Vec3, towards: Vec3): number => dot(towards, across) / dot(way, across);
  return [along(p.into, q.place.y, between), along(q.into, p.place.y, scale(between, -1))];
}
