import type { FaceId } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import { PARALLEL_DEG } from '../../tolerances.js';
import { MARKS_APART } from '../practice/index.js';
import type { FromFace, Holding } from './holding.js';
import type { Horn } from './horn.js';
import { acrossOf, byReference, type Crossing, crossings, referenceFirst } from './line-marks.js';
import type { SeenFace, Work } from './work-at-stage.js';

/** How a mortise's place is told to somebody with a rule and a square. */
export type Measured = Pick<Holding, 'along' | 'across' | 'marked'>;

/** What guides the router where no rail does. */
export interface Guided {
  readonly guide?: { readonly side: 'near' | 'far'; readonly offset: number } | undefined;
  readonly window?: unknown;
}

/**
 * How a mortise is measured at a stage: along its centre line from a face and, for a guide board or a template, across from
 * a face that runs along it. Where none runs along it, its lines are marked out by where they leave the mouth's face.
 *
 * @param horned an end that has a horn on, and is not measured from
 * @returns undefined when there is nothing to measure from
 */
export function measuredAt(work: Work, guided: Guided, horned?: FaceId): Measured | undefined {
  const free = guided.guide !== undefined || guided.window !== undefined;
  const across = free ? acrossFrom(work) : undefined;
  if (free && !across) {
    const lines = markedOut(work, guided, []);
    return lines && { along: lines.along, marked: lines.marked };
  }
  const along = alongFrom(work, horned);
  return along && { along, ...(across && { across }) };
}

/** A mortise that no face runs along, by its lines; and where their marks lie, in the mortise's x and y. */
export interface MarkedLines {
  /** Along the centre line from its first mark. */
  readonly along: FromFace;
  readonly marked: NonNullable<Holding['marked']>;
  readonly centreLine: readonly [Vec2, Vec2];
  readonly guideEdge?: readonly [Vec2, Vec2];
}

/**
 * The marks of a mortise that no face runs along: its centre line and a guide's edge, each by where it leaves the mouth's
 * face.
 *
 * @param horns that stand on the board
 * @returns undefined when the centre line leaves the face over an arc
 */
export function markedOut(work: Work, { guide }: Guided, horns: readonly Horn[]): MarkedLines | undefined {
  const line = crossings(work, 0, horns);
  if (!line) return undefined;
  const [first, second] = referenceFirst(line);
  const y = guide && (guide.side === 'near' ? -1 : 1) * guide.offset;
  const found = y === undefined ? undefined : crossings(work, y, horns);
  const edge = found && found[1].x - found[0].x >= MARKS_APART ? referenceFirst(found) : undefined;
  return {
    along: fromCrossing(first),
    marked: {
      centreLine: [first.mark, second.mark],
      ...(edge && { guideEdge: [edge[0].mark, edge[1].mark] }),
    },
    centreLine: [
      [first.x, 0],
      [second.x, 0],
    ],
    ...(edge &&
      y !== undefined && {
        guideEdge: [
          [edge[0].x, y],
          [edge[1].x, y],
        ],
      }),
  };
}

const fromCrossing = ({ x, mark }: Crossing): FromFace => ({
  from: mark.on,
  side: x < 0 ? 'start' : 'end',
  centre: Math.abs(x),
});

/** A face nearer to square than this serves a square held to it, wherever the centre line leaves the wood. */
const SQUARE_DEG = 1;

/** An arris farther out of square than this is measured from only where nothing better is. */
const LEANS_DEG = 30;

/** A face that leans from the mouth's by less makes a poor arris with it: the sine of the angle, 30°. */
const FLAT = 0.5;

function alongFrom(work: Work, horned: FaceId | undefined): FromFace | undefined {
  const line = crossings(work, 0, [])?.filter(({ mark }) => mark.on !== horned);
  const met = (id: FaceId) => line === undefined || line.some(({ mark }) => mark.on === id);
  const face = work.faces
    .filter((one) => {
      const deg = skewDeg(one, 0);
      return (
        one.offset > 0 &&
        one.id !== horned &&
        acrossOf(one) > FLAT &&
        (deg < SQUARE_DEG || (deg < LEANS_DEG && met(one.id)))
      );
    })
    .toSorted(byReference)[0];
  if (face) return fromFace(face, 0);
  const nearest = line?.toSorted((a, b) => Math.abs(a.x) - Math.abs(b.x))[0];
  return nearest && fromCrossing(nearest);
}

/** The distance across from a face that runs along the mortise. */
function acrossFrom(work: Work): FromFace | undefined {
  const face = work.faces
    .filter((one) => one.offset > 0 && acrossOf(one) > FLAT && skewDeg(one, 1) < PARALLEL_DEG)
    .toSorted(byReference)[0];
  return face && fromFace(face, 1);
}

/** How far an arris of the mouth is from square to an axis of the mortise, degrees. */
const skewDeg = (face: SeenFace, axis: 0 | 1): number =>
  (Math.atan2(Math.abs(face.normal[1 - axis]!), Math.abs(face.normal[axis])) * 180) / Math.PI;

function fromFace(face: SeenFace, axis: 0 | 1): FromFace {
  const along = face.normal[axis];
  const side = axis === 0 ? (along > 0 ? 'end' : 'start') : along > 0 ? 'far' : 'near';
  return { from: face.id, side, centre: face.offset / Math.abs(along) };
}
