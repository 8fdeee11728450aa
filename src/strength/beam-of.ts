import type { Design, PlacedBoard } from '../assembly/index.js';
import { type Face, isFace, type Mortise, possibleFaces } from '../board/index.js';
import {
  directionOut,
  dot,
  frameOut,
  pointIn,
  pointOut,
  scale,
  type Vec2,
  type Vec3,
} from '../frame/index.js';
import { inertiaOf, type Section } from '../statics/index.js';

/** From where to where along a board's grain, mm. */
export interface Interval {
  readonly from: number;
  readonly to: number;
}

/** Where one board holds another up. */
export interface Rest {
  readonly by: string;
  /** Whether it is below, or an end of the board is held by tenons. */
  readonly kind: 'below' | 'end';
  readonly along: Interval;
  /** Level across the board: along its width where it lies, through its thickness where it stands on edge. */
  readonly across: Interval;
  /** Mortises of the board that is held up over it. */
  readonly mortises: readonly Mortise[];
}

/** Rests that lie side by side across a board. */
export interface Support extends Interval {
  readonly rests: readonly Rest[];
}

/** A board as a beam along its grain; board frame, mm. */
export interface Beam {
  readonly placed: PlacedBoard;
  readonly length: Interval;
  /** Everything that holds it up. */
  readonly rests: readonly Rest[];
  /** From one end to the other; rests that run all along it are left out. */
  readonly supports: readonly Support[];
  /** Whether its thickness stands upright, or its width. */
  readonly lies: boolean;
  /** Loops of its wide face, openings among them. */
  readonly loops: readonly (readonly Vec2[])[];
  /** Boards on which it rests all along: they bend with it. */
  readonly along: readonly AlongBoard[];
}

/** A board that runs along another one below it. */
export interface AlongBoard {
  readonly id: string;
  /** Where it runs across the other's width. */
  readonly across: Interval;
  /** Second moment of area, mm⁴. */
  readonly inertia: number;
}

/** A support that runs along more of a board than this carries it all along. */
const ALL_ALONG = 1 / 2;

/** Cosine of the lean up to which a face looks down or along. */
const LOOKS = 0.7;

/** What holds a board up along its grain: whatever it is joined or fastened to from below or at its ends. */
export function beamOf(design: Design, placed: PlacedBoard): Beam {
  const long = placed.board.blank.length;
  const rests = [...seats(design, placed), ...fastened(design, placed)].flatMap(
    (seat) => restOf(placed, seat) ?? [],
  );
  return {
    placed,
    length: { from: 0, to: long },
    rests,
    supports: merged(rests.filter(({ along }) => along.to - along.from < ALL_ALONG * long)),
    lies: liesFlat(placed),
    loops: wideLoops(placed),
    along: rests
      .filter(({ along }) => along.to - along.from >= ALL_ALONG * long)
      .map(({ by, across }) => {
        const below = design.boards.find(({ board }) => board.id === by)!;
        return { id: by, across, inertia: inertiaOf(standingSection(below)) };
      }),
  };
}

/** Whether a board's thickness stands upright rather than its width. */
const liesFlat = ({ place }: PlacedBoard): boolean => Math.abs(place.z[2]) > Math.abs(place.y[2]);

/** Its whole section as it stands. */
export function standingSection(placed: PlacedBoard): Section {
  const { width, thickness } = placed.board.blank;
  return liesFlat(placed) ? { breadth: width, height: thickness } : { breadth: thickness, height: width };
}

function wideLoops({ board }: PlacedBoard): Beam['loops'] {
  const { frame, region } = possibleFaces(board).find(({ id }) => id === 'opposite-face')!;
  return region.map((loop) =>
    loop.map(([u, v]): Vec2 => {
      const [x, y] = pointOut(frame, [u, v, 0]);
      return [x, y];
    }),
  );
}

/** Where two boards meet, seen from the board that is held up. */
interface Seat {
  readonly by: string;
  /** Out of the board that is held up, assembly frame. */
  readonly normal: Vec3;
  /** Corners of the other board's face, assembly frame; none when it has no such face. */
  readonly corners: () => readonly Vec3[];
  readonly mortises: readonly Mortise[];
}

function cornersAt(other: PlacedBoard, point: Vec3, way: Vec3): readonly Vec3[] {
  const face = faceAt(other, point, way);
  if (!face) return [];
  const standing = frameOut(other.place, face.frame);
  return face.region.flat().map(([x, y]) => pointOut(standing, [x, y, 0]));
}

function seats(design: Design, { board, place }: PlacedBoard): readonly Seat[] {
  return design.joints.flatMap((joint): Seat[] => {
    if (joint.a !== board.id && joint.b !== board.id) return [];
    const by = joint.a === board.id ? joint.b : joint.a;
    const other = design.boards.find((one) => one.board.id === by)!;
    const mortises = board.mortises.filter((mortise) => mortise.joint === joint.id);
    const normal = scale(joint.seat.z, joint.a === board.id ? 1 : -1);
    const own = mortises[0]?.faceNormal;
    const corners = () => cornersAt(other, joint.seat.origin, scale(normal, -1));
    return [{ by, normal: own ? directionOut(place, own) : normal, corners, mortises }];
  });
}

const fastened = (design: Design, { board }: PlacedBoard): readonly Seat[] => {
  const places = (design.fastenings ?? []).filter(({ held }) => held === board.id);
  return [...new Set(places.map(({ to }) => to))].map((by): Seat => {
    const { at } = places.find(({ to }) => to === by)!;
    const other = design.boards.find((one) => one.board.id === by)!;
    const corners = () => cornersAt(other, at.origin, at.z);
    return { by, normal: scale(at.z, -1), corners, mortises: [] };
  });
};

/** The face of a board that looks a way and has a point in its plane. */
const faceAt = (other: PlacedBoard, point: Vec3, way: Vec3): Face | undefined =>
  possibleFaces(other.board)
    .filter(({ frame }) => dot(directionOut(other.place, frame.z), way) > LOOKS)
    .map((face) => ({ face, off: Math.abs(pointIn(frameOut(other.place, face.frame), point)[2]) }))
    .toSorted((a, b) => a.off - b.off)
    .find(({ face }) => isFace(face))?.face;

function restOf(placed: PlacedBoard, { by, normal, corners, mortises }: Seat): Rest | undefined {
  const { place, board } = placed;
  const { length: long, width, thickness } = board.blank;
  const [level, wide] = liesFlat(placed) ? ([1, width] as const) : ([2, thickness] as const);
  const along = dot(normal, place.x);
  if (Math.abs(along) > LOOKS) {
    const at = along < 0 ? 0 : long;
    return { by, kind: 'end', along: { from: at, to: at }, across: { from: 0, to: wide }, mortises: [] };
  }
  if (normal[2] > -LOOKS) return undefined;
  const seen = corners().map((corner) => pointIn(place, corner));
  if (seen.length === 0) return undefined;
  const span = (axis: 0 | 1 | 2, most: number): Interval => ({
    from: Math.max(0, Math.min(...seen.map((p) => p[axis]))),
    to: Math.min(most, Math.max(...seen.map((p) => p[axis]))),
  });
  return { by, kind: 'below', along: span(0, long), across: span(level, wide), mortises };
}

/** Supports from one end to the other; rests that overlap along the grain, two legs side by side, as one. */
function merged(rests: readonly Rest[]): readonly Support[] {
  const supports: Support[] = [];
  for (const rest of rests.toSorted((a, b) => a.along.from - b.along.from)) {
    const last = supports.at(-1);
    if (!last || rest.along.from > last.to) supports.push({ ...rest.along, rests: [rest] });
    else
      supports[supports.length - 1] = {
        from: last.from,
        to: Math.max(last.to, rest.along.to),
        rests: [...last.rests, rest],
      };
  }
  return supports;
}

/** The wood across a board at a place along its grain, as intervals of its width; what openings take is left out. */
export function woodAcross({ placed, loops }: Beam, x: number): readonly Interval[] {
  const cuts: number[] = [];
  for (const loop of loops)
    for (let i = 0; i < loop.length; i += 1) {
      const [a, b] = [loop[i]!, loop[(i + 1) % loop.length]!];
      if (a[0] > x !== b[0] > x) cuts.push(a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]));
    }
  const sorted = cuts.toSorted((a, b) => a - b);
  const wood = sorted.flatMap((from, i): Interval[] =>
    i % 2 === 0 && i + 1 < sorted.length ? [{ from, to: sorted[i + 1]! }] : [],
  );
  return wood.length > 0 ? wood : [{ from: 0, to: placed.board.blank.width }];
}

/** How much of intervals lies within a band. */
export const within = (wood: readonly Interval[], band: Interval): number =>
  wood.reduce((sum, { from, to }) => sum + Math.max(0, Math.min(to, band.to) - Math.max(from, band.from)), 0);
