import type { FaceId } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import type { Region } from '../../profile/index.js';
import { SAME_POINT } from '../../tolerances.js';
import type { Horn } from './horn.js';
import type { SeenFace, Work } from './work-at-stage.js';

/**
 * A pencil mark on the arris between the mouth's face and the face `on`: `at` mm along that arris from its corner with the
 * face `from`. Where a horn stands beyond one of them, its own end takes the face's place: the horns' lengths, 0 for none.
 */
export interface LineMark {
  readonly on: FaceId;
  readonly from: FaceId;
  readonly at: number;
  readonly onHorn: number;
  readonly fromHorn: number;
}

/** A line across the mouth's face, set out without a protractor: by the two marks where it leaves the face. */
export type LineMarks = readonly [LineMark, LineMark];

/** The faces a rule is held against: references first. */
const RULED: readonly FaceId[] = ['reference-end', 'reference-edge', 'opposite-end', 'opposite-edge'];

/** Sorts faces by how well they serve to measure from: references first, then as they come. */
export const byReference = (a: { readonly id: FaceId }, b: { readonly id: FaceId }): number =>
  order(a.id) - order(b.id);

const order = (id: FaceId): number => {
  const at = RULED.indexOf(id);
  return at < 0 ? RULED.length : at;
};

/** Two arrises that meet at a flatter angle than this (its sine) have no corner to measure from. */
const CORNER = 0.5;

/** An arris of the mouth: the face beside it, and the line it lies on, `normal · p = offset` with the normal out of the wood. */
interface Arris {
  readonly id: FaceId;
  readonly normal: Vec2;
  readonly offset: number;
  readonly horn: number;
}

/** A point where a line leaves the mouth's face, by its place along the mortise. */
export interface Crossing {
  readonly x: number;
  readonly mark: LineMark;
}

/**
 * Where a line along the mortise leaves the mouth's face, outermost on both sides.
 *
 * @param y distance of the line from the mortise's centre line, mm
 * @param horns that stand on the board at this stage
 * @returns from -x to +x; undefined when it leaves the face over an arc, or without a corner to measure from
 */
export function crossings(
  work: Work,
  y: number,
  horns: readonly Horn[],
): readonly [Crossing, Crossing] | undefined {
  const { arrises, loops } = arrisesOf(work, horns);
  const found = loops
    .flatMap((loop) => loop.map((p, i) => [p, loop[(i + 1) % loop.length]!] as const))
    .flatMap(([p, q]) => {
      const [from, to] = [height(p, y), height(q, y)];
      if (from > 0 === to > 0) return [];
      const x = p[0] + ((q[0] - p[0]) * from) / (from - to);
      const arris = arrises.find((one) => liesOn(one, p) && liesOn(one, q));
      return [{ x, arris }];
    })
    .toSorted((a, b) => a.x - b.x);
  const ends = [found[0], found.at(-1)].map((end) => {
    const mark = end?.arris && markOn(end.arris, [end.x, y], arrises);
    return mark && { x: end.x, mark };
  });
  const [start, end] = ends;
  return start && end && end.x - start.x > SAME_POINT ? [start, end] : undefined;
}

/** Both ends of a line, the one on the better face to measure from first: a reference, without a horn. */
export function referenceFirst([start, end]: readonly [Crossing, Crossing]): readonly [Crossing, Crossing] {
  const worse = ({ mark }: Crossing) => order(mark.on) + (mark.onHorn > 0 ? RULED.length : 0);
  return worse(end) < worse(start) ? [end, start] : [start, end];
}

/** The wood of the mouth's face with the horns that stand beyond it, in the mortise's x and y. */
export const hornedMouth = (work: Work, horns: readonly Horn[]): Region => arrisesOf(work, horns).loops;

/** A corner on the line, but for noise, lies on neither side of it. */
const height = (p: Vec2, y: number): number => (Math.abs(p[1] - y) < SAME_POINT ? 0 : p[1] - y);

const liesOn = ({ normal, offset }: Arris, p: Vec2): boolean =>
  Math.abs(normal[0] * p[0] + normal[1] * p[1] - offset) < 1000 * SAME_POINT;

/** The arrises of the mouth and its outline, with the horns on. */
function arrisesOf(work: Work, horns: readonly Horn[]) {
  const arrises = work.faces.flatMap((face): Arris[] => {
    const across = acrossOf(face);
    if (across < SAME_POINT) return [];
    const horn = horns.find(({ end }) => end === face.id)?.length ?? 0;
    const normal: Vec2 = [face.normal[0] / across, face.normal[1] / across];
    return [{ id: face.id, normal, offset: face.offset / across + horn, horn }];
  });
  const loops: Region = arrises
    .filter(({ horn }) => horn > 0)
    .reduce(
      (left: Region, { normal, offset, horn, ...rest }): Region =>
        left.map((loop) =>
          loop.map(
            (p): Vec2 =>
              liesOn({ ...rest, normal, offset: offset - horn, horn }, p)
                ? [p[0] + normal[0] * horn, p[1] + normal[1] * horn]
                : p,
          ),
        ),
      work.mouth,
    );
  const bounding = arrises.filter((arris) =>
    loops.some((loop) => loop.some((p, i) => liesOn(arris, p) && liesOn(arris, loop.at(i - 1)!))),
  );
  return { arrises: bounding, loops };
}

/** How much of a face's normal lies in the plane of the mouth. */
export const acrossOf = ({ normal }: SeenFace): number => Math.hypot(normal[0], normal[1]);

function markOn(arris: Arris, p: Vec2, arrises: readonly Arris[]): LineMark | undefined {
  const along: Vec2 = [-arris.normal[1], arris.normal[0]];
  const [best] = arrises
    .flatMap((one) => {
      const meets = one.normal[0] * along[0] + one.normal[1] * along[1];
      const inwards = one.offset - one.normal[0] * p[0] - one.normal[1] * p[1];
      if (Math.abs(meets) < CORNER || inwards < -1000 * SAME_POINT) return [];
      const at = Math.max(0, inwards / Math.abs(meets));
      return [
        { id: one.id, mark: { on: arris.id, from: one.id, at, onHorn: arris.horn, fromHorn: one.horn } },
      ];
    })
    .toSorted(byReference);
  return best?.mark;
}
