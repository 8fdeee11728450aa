import type { Board, FaceId } from '../../src/board/index.js';
import { add, cross, dot, scale, subtract, unit, type Vec3 } from '../../src/frame/index.js';
import type { CardCut, LineMark, SetupCard } from '../../src/shop/index.js';

/** A mortise as somebody cuts it who has the card, the board and nothing else; board frame, mm. */
export interface CutMortise {
  readonly centre: Vec3;
  /** Along its length; which of the two ways does not matter. */
  readonly along: Vec3;
  /** Out of the wood. */
  readonly out: Vec3;
  readonly width: number;
  readonly length: number;
  readonly depth: number;
}

export interface Plane {
  readonly normal: Vec3;
  readonly point: Vec3;
}

/**
 * Rebuilds a mortise from the numbers of its card.
 *
 * The plate lies on the named face, the near rail stands its distance from the cutter, the middle of the mortise is as far
 * from the named end or edge as the card says.
 *
 * @param rounded reads every distance as it is printed, to this many mm
 */
export function readCard(card: SetupCard, cut: CardCut, board: Board, rounded = 0): CutMortise {
  const read = (mm: number): number => (rounded === 0 ? mm : Math.round(mm / rounded) * rounded);
  const mouth = planeOf(board, cut.face);
  const out = mouth.normal;
  const { along, line } = centreLine(card, cut, board, mouth, read);
  // a rule held along the centre line, from where it leaves the named face or the end of the horn beyond it
  const from = planeOf(board, cut.from);
  const toFace = dot(subtract(from.point, line), from.normal) / dot(along, from.normal);
  const start = add(line, scale(along, toFace));
  const inwards = dot(along, from.normal) < 0 ? along : scale(along, -1);
  // a horn along the grain is longer along a slanting line
  const start0 = add(start, scale(inwards, cut.horn / dot(inwards, from.normal)));
  const ends = cut.ends.map((end) => add(start0, scale(inwards, read(end))));
  return {
    centre: scale(add(ends[0]!, ends[1]!), 0.5),
    along,
    out,
    width: card.cutter,
    length: dot(subtract(ends[1]!, ends[0]!), inwards),
    depth: card.depth,
  };
}

/** The line the cutter runs on: a point of it and its direction, in the plane of the mouth. */
function centreLine(
  card: SetupCard,
  cut: CardCut,
  board: Board,
  mouth: Plane,
  read: (mm: number) => number,
): { along: Vec3; line: Vec3 } {
  const [rail, face, side] =
    cut.nearFace !== undefined
      ? ([card.nearRail!, cut.nearFace, 1] as const)
      : ([card.farRail, cut.farFace, -1] as const);
  if (rail && face !== undefined) {
    const beside = planeOf(board, face);
    const lean = rail.wedge && ['start', 'end'].includes(rail.wedge.thickEnd) ? rail.wedge : undefined;
    const angle = lean ? (lean.angleDeg * Math.PI) / 180 : 0;
    const signed = lean?.thickEnd === 'start' ? -angle : angle;
    const level = unit(subtract(beside.normal, scale(mouth.normal, dot(beside.normal, mouth.normal))));
    const along = add(
      scale(cross(mouth.normal, level), side * Math.cos(signed)),
      scale(level, Math.sin(signed)),
    );
    // away from the rail, in the plane of the mouth
    const away = scale(cross(mouth.normal, along), side);
    const toWork = read(rail.distance) - (rail.wedge ? read(rail.wedge.thicknessAtMouth) : 0);
    if (lean) return { along, line: crossingAt(cut, board, mouth, along, away, toWork, beside) };
    const edge = meet(mouth, beside);
    return { along, line: add(edge, scale(away, toWork)) };
  }
  if (cut.marked) {
    const centre = markedLine(cut.marked.centreLine, board, mouth, read);
    if (!cut.marked.guideEdge) return { along: centre.along, line: centre.point };
    // the router runs along the guide, wherever the centre line was drawn
    const guide = markedLine(cut.marked.guideEdge, board, mouth, read);
    const beside = cross(mouth.normal, guide.along);
    const away = dot(subtract(centre.point, guide.point), beside) > 0 ? beside : scale(beside, -1);
    return { along: guide.along, line: add(guide.point, scale(away, read(card.guideOffset!))) };
  }
  const across = planeOf(board, cut.across!.from);
  const level = unit(subtract(across.normal, scale(mouth.normal, dot(across.normal, mouth.normal))));
  return {
    along: cross(mouth.normal, level),
    line: add(meet(mouth, across), scale(level, cut.across!.horn - read(cut.across!.centre))),
  };
}

/** A straightedge on two pencil marks, each on an arris of the mouth; a horn's end stands out along the grain. */
export function markedLine(
  marks: readonly LineMark[],
  board: Board,
  mouth: Plane,
  read: (mm: number) => number,
): { point: Vec3; along: Vec3 } {
  const points = marks.map(({ on, from, at, onHorn, fromHorn }) => {
    const [beside, end] = [outBy(planeOf(board, on), onHorn), outBy(planeOf(board, from), fromHorn)];
    const arris = meet(mouth, beside);
    const direction = unit(cross(mouth.normal, beside.normal));
    const meets = dot(direction, end.normal);
    const corner = add(arris, scale(direction, dot(subtract(end.point, arris), end.normal) / meets));
    return add(corner, scale(direction, meets > 0 ? -read(at) : read(at)));
  });
  return { point: points[0]!, along: unit(subtract(points[1]!, points[0]!)) };
}

const outBy = ({ normal, point }: Plane, by: number): Plane => ({
  normal,
  point: add(point, scale(normal, by)),
});

/** With a wedge that tapers along the mortise the rail's distance holds half way along it only. */
function crossingAt(
  cut: CardCut,
  board: Board,
  mouth: Plane,
  along: Vec3,
  away: Vec3,
  toWork: number,
  beside: Plane,
): Vec3 {
  const from = planeOf(board, cut.from);
  // the centre lies on the mouth; its distances to two planes, along two directions, are known
  const inwards = dot(along, from.normal) < 0 ? along : scale(along, -1);
  const start = meet(mouth, beside);
  const rows = [
    { direction: away, plane: beside, distance: toWork },
    { direction: inwards, plane: from, distance: cut.centre - cut.horn },
  ].map(({ direction, plane, distance }) => ({
    normal: plane.normal,
    value: dot(subtract(plane.point, start), plane.normal) + distance * dot(direction, plane.normal),
  }));
  const [p, q] = rows as [(typeof rows)[0], (typeof rows)[0]];
  const [a, b] = [dot(along, p.normal), dot(away, p.normal)];
  const [c, d] = [dot(along, q.normal), dot(away, q.normal)];
  const det = a * d - b * c;
  const s = (p.value * d - b * q.value) / det;
  const t = (a * q.value - p.value * c) / det;
  return add(start, add(scale(along, s), scale(away, t)));
}

/** The point common to two planes that is nearest to the first one's own. */
function meet(a: Plane, b: Plane): Vec3 {
  const across = unit(subtract(b.normal, scale(a.normal, dot(a.normal, b.normal))));
  const t = dot(subtract(b.point, a.point), b.normal) / dot(across, b.normal);
  return add(a.point, scale(across, t));
}

/** Faces by their names, read off the outline and the bevels. */
export function planeOf(board: Board, id: FaceId): Plane {
  const { length, width, thickness } = board.blank;
  const bevel = board.bevels.find((one) => one.id === id);
  if (bevel) return { normal: bevel.normal, point: bevel.point };
  const named: Readonly<Record<string, Plane>> = {
    'reference-face': { normal: [0, 0, -1], point: [0, 0, 0] },
    'opposite-face': { normal: [0, 0, 1], point: [0, 0, thickness] },
    'reference-edge': { normal: [0, -1, 0], point: [0, 0, 0] },
    'opposite-edge': { normal: [0, 1, 0], point: [0, width, 0] },
    'reference-end': { normal: [-1, 0, 0], point: [0, 0, 0] },
    'opposite-end': { normal: [1, 0, 0], point: [length, 0, 0] },
  };
  if (named[id]) return named[id];
  const at = Number(/^edge-(\d+)$/.exec(id)![1]) - 1;
  const from = board.outline[at]!;
  const to = board.outline[(at + 1) % board.outline.length]!;
  return { normal: unit([to.y - from.y, from.x - to.x, 0]), point: [from.x, from.y, 0] };
}
