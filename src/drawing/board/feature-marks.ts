import type { Board } from '../../board/index.js';
import { add, dot, scale, type Vec2, type Vec3 } from '../../frame/index.js';
import { type ArcSegment, segments } from '../../profile/index.js';
import { NOISE, STRAIGHT_DEG } from '../../tolerances.js';
import {
  type Box,
  type Dimension,
  type DrawingUnits,
  labelAt,
  type Room,
  type Stroke,
  sizeRows,
  stroke,
} from '../sheet/index.js';
import { bevelAngle } from '../template/index.js';
import { onSheet, type ViewPlace } from '../view/index.js';
import { type MarkedFeature, markedFeatures } from './board-features.js';
import { isCircle } from './board-stops.js';
import { type BoardView, FACING } from './board-views.js';

/** How far a centre line reaches beyond what it belongs to, mm on paper. */
const BEYOND = 2;

type Cut = Exclude<MarkedFeature, { kind: 'bevel' }>['of'];

const sizes = (of: Cut) =>
  'diameter' in of
    ? { half: of.diameter / 2, across: of.diameter / 2 }
    : { half: of.length / 2, across: of.width / 2 };

/** Centre lines of everything cut into a board, in one view. */
export function centreLines(board: Board, view: BoardView, place: ViewPlace): readonly Stroke[] {
  const more = BEYOND / place.factor;
  const line = (from: Vec3, to: Vec3) => stroke('centre', onSheet(place, from), onSheet(place, to));
  return markedFeatures(board).flatMap(({ kind, of }): Stroke[] => {
    if (kind === 'bevel') return [];
    const { origin, x, y, z } = of.at;
    const { half, across } = sizes(of);
    const facing = Math.abs(dot(z, view.frame.z));
    if (facing > FACING) {
      return [
        line(add(origin, scale(x, -half - more)), add(origin, scale(x, half + more))),
        line(add(origin, scale(y, -across - more)), add(origin, scale(y, across + more))),
      ];
    }
    if (facing > 1 - FACING * FACING) return [];
    const depth = of.depth === 'through' ? board.blank.thickness : of.depth;
    return [line(add(origin, scale(z, more)), add(origin, scale(z, -depth - more)))];
  });
}

/** The mark of each feature beside it, once: in the view that looks into it, else where it is seen from behind. */
export function featureLabels(
  board: Board,
  views: readonly { readonly view: BoardView; readonly place: ViewPlace }[],
  room: Room,
  within: Box,
): readonly Stroke[] {
  return markedFeatures(board).flatMap(({ mark, kind, of }) => {
    if (kind === 'bevel') return [];
    const facing = (least: (cos: number) => boolean) =>
      views.find(({ view }) => least(dot(of.at.z, view.frame.z)));
    const front = facing((cos) => cos > FACING);
    const shown = front ?? facing((cos) => cos < -FACING) ?? views[0]!;
    const text = front ? mark : `${mark} (far side)`;
    const { half, across } = sizes(of);
    const ends = [half, -half].map((run) => onSheet(shown.place, add(of.at.origin, scale(of.at.x, run))));
    const middle = onSheet(shown.place, of.at.origin);
    const from: Vec2 = ends[0]![1] > ends[1]![1] ? ends[0]! : ends[1]!;
    const point: Vec2 = [(from[0] + middle[0]) / 2, (from[1] + middle[1]) / 2];
    return labelAt(room, point, text, across * shown.place.factor + 1, {
      leader: 'from afar',
      within,
      bold: true,
    });
  });
}

/** Radii that differ by less are told as one, mm. */
const ALIKE = 0.1;

/** Radii of the outline and its openings, one figure for all arcs of one radius, and diameters of round openings. */
export function radiusDimensions(
  board: Board,
  place: ViewPlace,
  room: Room,
  within: Box,
  units: DrawingUnits,
): readonly Dimension[] {
  const arcs = [board.outline, ...board.openings.map((one) => one.outline).filter((one) => !isCircle(one))]
    .flatMap(segments)
    .filter((piece): piece is ArcSegment => piece.kind === 'arc');
  const groups = new Map<number, ArcSegment[]>();
  for (const arc of arcs) {
    const steps = Math.round(arc.radius / ALIKE);
    groups.set(steps, [...(groups.get(steps) ?? []), arc]);
  }
  const radii = [...groups.values()].map((alike) => {
    const arc = alike[0]!;
    const count = alike.length > 1 ? `${alike.length}× ` : '';
    return leader(arc.radius, `radius of ${alike.length} arcs`, `${count}R`, middleOf(arc));
  });
  const rounds = board.openings
    .filter((one) => isCircle(one.outline))
    .map(({ id, outline }) => {
      const arc = segments(outline)[0] as ArcSegment;
      return leader(2 * arc.radius, `diameter of ${id}`, 'Ø', middleOf(arc));
    });
  return [...radii, ...rounds];

  function leader(value: number, what: string, prefix: string, at: Vec2): Dimension {
    const point = onSheet(place, [...at, board.blank.thickness]);
    const text = `${prefix}${sizeRows(value, units).join(' ')}`;
    const parts = labelAt(room, point, text, 2.5, { leader: 'always', within });
    return { kind: 'dimension', what, value, unit: 'mm', parts };
  }
}

/** Straight sides of the outline that run neither along the grain nor square to it: the angle to whichever is nearer, on an arc. */
export function slantAngles(board: Board, place: ViewPlace, room: Room, within: Box): readonly Dimension[] {
  const groups = new Map<number, { readonly deg: number; readonly pieces: (readonly [Vec2, Vec2])[] }>();
  for (const piece of segments(board.outline)) {
    if (piece.kind !== 'line') continue;
    const { from, to } = piece;
    const [dx, dy] = [Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1])];
    const deg = (Math.atan2(Math.min(dx, dy), Math.max(dx, dy)) * 180) / Math.PI;
    if (deg < STRAIGHT_DEG) continue;
    const key = Math.round(deg * 100);
    const group = groups.get(key) ?? { deg, pieces: [] };
    group.pieces.push([from, to]);
    groups.set(key, group);
  }
  const { length, width, thickness } = board.blank;
  const onBorder = ([x, y]: Vec2) => [x, x - length, y, y - width].some((off) => Math.abs(off) < 1e-6);
  return [...groups.values()].map(({ deg, pieces }): Dimension => {
    const count = pieces.length > 1 ? `${pieces.length}× ` : '';
    const [first, last] = pieces[0]!;
    const [vertex, end] = onBorder(first) ? [first, last] : [last, first];
    const alongX = Math.abs(end[0] - vertex[0]) > Math.abs(end[1] - vertex[1]);
    const square: Vec2 = alongX ? [end[0], vertex[1]] : [vertex[0], end[1]];
    const on = (p: Vec2) => onSheet(place, [...p, thickness]);
    const text = `${count}${Math.round(deg * 100) / 100}°`;
    const parts = angleOnArc(on(vertex), on(square), on(end), text, room, within);
    return { kind: 'dimension', what: `slant of ${pieces.length} sides`, value: deg, unit: 'deg', parts };
  });
}

/** Radius of the arc of an angle, and how far the line it starts from runs on beyond it, mm on the sheet. */
const [ARC, PAST] = [22, 2];

/** An angle as an arc from one leg to the other round their corner, with its figure; the first leg is drawn, the second is there. */
function angleOnArc(
  vertex: Vec2,
  leg: Vec2,
  other: Vec2,
  text: string,
  room: Room,
  within: Box,
): readonly Stroke[] {
  const run = (p: Vec2) => Math.hypot(p[0] - vertex[0], p[1] - vertex[1]);
  const turn = (p: Vec2) => (Math.atan2(p[1] - vertex[1], p[0] - vertex[0]) * 180) / Math.PI;
  const radius = Math.min(ARC, run(other) * 0.85);
  const sweep = ((turn(other) - turn(leg) + 540) % 360) - 180;
  const at = (deg: number, reach: number): Vec2 => [
    vertex[0] + reach * Math.cos((deg * Math.PI) / 180),
    vertex[1] + reach * Math.sin((deg * Math.PI) / 180),
  ];
  const tip = at(turn(leg), radius + PAST);
  room.avoid([vertex, tip]);
  room.avoid([at(turn(leg), radius), at(turn(leg) + sweep / 2, radius), at(turn(other), radius)]);
  return [
    stroke('dimension', vertex, tip),
    {
      kind: 'arc',
      line: 'dimension',
      centre: vertex,
      radius,
      startDeg: ((sweep < 0 ? turn(other) : turn(leg)) + 360) % 360,
      sweepDeg: Math.abs(sweep),
    },
    ...labelAt(room, at(turn(leg) + sweep / 2, radius), text, 1.5, { leader: 'always', within }),
  ];
}

/** The middle of an arc. */
function middleOf({ from, to, centre, radius, includedDeg, sense }: ArcSegment): Vec2 {
  const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  const turn = ((sense === 'clockwise' ? -1 : 1) * includedDeg * Math.PI) / 360;
  if (from === to) return from;
  return [centre[0] + radius * Math.cos(start + turn), centre[1] + radius * Math.sin(start + turn)];
}

/** The angle of each bevel, in the view that sees its section; with its mark. */
export function bevelAngles(
  board: Board,
  views: readonly { readonly view: BoardView; readonly place: ViewPlace }[],
  room: Room,
  within: Box,
): readonly Dimension[] {
  return markedFeatures(board).flatMap(({ mark, kind, of }): Dimension[] => {
    if (kind !== 'bevel') return [];
    const shown = views.find(
      ({ view }) => view.role !== 'face' && Math.abs(dot(of.normal, view.frame.z)) < 1e-6,
    );
    if (!shown) return [];
    const { deg: value, from } = bevelAngle(of);
    const slope = Math.hypot(of.normal[0], of.normal[1]);
    const { length, width, thickness } = board.blank;
    const onPlane = (z: number): Vec3 => {
      const rise = ((of.point[2] - z) * of.normal[2]) / slope ** 2;
      return [of.point[0] + of.normal[0] * rise, of.point[1] + of.normal[1] * rise, z];
    };
    // a flat bevel leaves the wood before it is half through
    const middleOnBoard = (): Vec3 => {
      const there = Array.from({ length: 21 }, (_, i) => onPlane((i * thickness) / 20)).filter(
        ([x, y]) => x >= -NOISE && x <= length + NOISE && y >= -NOISE && y <= width + NOISE,
      );
      return there[Math.floor(there.length / 2)] ?? onPlane(thickness / 2);
    };
    const on = (p: Vec3) => onSheet(shown.place, p);
    const text = `${mark} ${Math.round(value * 100) / 100}°`;
    const [x, y] = onPlane(0);
    const parts =
      from === 'off square' && value > STRAIGHT_DEG
        ? angleOnArc(on([x, y, 0]), on([x, y, thickness]), on(onPlane(thickness)), text, room, within)
        : labelAt(room, on(middleOnBoard()), text, 2, { leader: 'always', within });
    return [{ kind: 'dimension', what: `${mark} ${from}`, value, unit: 'deg', parts }];
  });
}
