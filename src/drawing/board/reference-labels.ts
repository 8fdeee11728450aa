import type { Board } from '../../board/index.js';
import type { Vec2, Vec3 } from '../../frame/index.js';
import {
  arrowHead,
  type Box,
  bestPlace,
  labelAt,
  letters,
  path,
  type Room,
  SMALL,
  type Stroke,
  stroke,
  textWidth,
} from '../sheet/index.js';
import { onSheet, type ViewPlace } from '../view/index.js';

/** Names the reference edge and the reference end in the main view, each marked with a triangle, and the way the grain runs. */
export function referenceLabels(board: Board, place: ViewPlace, room: Room, within: Box): readonly Stroke[] {
  const { length, width } = board.blank;
  // turned over, the edge lies above
  const inward: Vec2 = [0, Math.sign(place.frame.y[1])];
  return [
    // the grain asks for most room
    ...grain(board, place, room),
    ...mark(edgeSpot(board, length * 0.3), inward, 'reference edge'),
    ...mark(endSpot(board, width * 0.8), [1, 0], 'reference end'),
  ];

  function mark(at: Vec3, into: Vec2, name: string): readonly Stroke[] {
    const [x, y] = onSheet(place, at);
    const point = (along: number, aside: number): Vec2 => [
      x + into[0] * along - into[1] * aside,
      y + into[1] * along + into[0] * aside,
    ];
    const triangle = {
      ...path('dimension', [point(0, 0), point(2.4, 1.4), point(2.4, -1.4)], true),
      fill: 'ink' as const,
    };
    room.avoid([...triangle.points, triangle.points[0]!]);
    return [triangle, ...labelAt(room, point(2.4, 0), name, 1.5, { leader: 'from afar', within })];
  }
}

/** A place of the outline on the reference edge, near a distance from the end; the blank's own where the outline has none. */
const edgeSpot = (board: Board, x: number): Vec3 => [nearestOn(board, 1, x), 0, 0];
const endSpot = (board: Board, y: number): Vec3 => [0, nearestOn(board, 0, y), 0];

function nearestOn({ outline }: Board, axis: 0 | 1, wanted: number): number {
  const along = axis === 1 ? 'x' : 'y';
  const across = axis === 1 ? 'y' : 'x';
  let best = wanted;
  let least = Number.POSITIVE_INFINITY;
  outline.forEach((from, i) => {
    const to = outline[(i + 1) % outline.length]!;
    if (from.bulge !== 0 || Math.abs(from[across]) > 1e-6 || Math.abs(to[across]) > 1e-6) return;
    const [low, high] = [Math.min(from[along], to[along]), Math.max(from[along], to[along])];
    // not at a corner, where another face begins
    const inset = (high - low) / 4;
    const spot = Math.min(Math.max(wanted, low + inset), high - inset);
    if (Math.abs(spot - wanted) < least) [best, least] = [spot, Math.abs(spot - wanted)];
  });
  return best;
}

/** The word between two arrows along the grain: on the board, or beside it, where the fewest lines run. */
function grain(board: Board, place: ViewPlace, room: Room): readonly Stroke[] {
  const { length, width } = board.blank;
  const half = textWidth('grain', SMALL) / 2;
  const reach = half + 9;
  const corners = [onSheet(place, [0, 0, 0]), onSheet(place, [length, width, 0])];
  const middle = (corners[0]![0] + corners[1]![0]) / 2;
  const right = Math.max(...corners.map(([x]) => x));
  const [low, high] = [Math.min(...corners.map(([, y]) => y)), Math.max(...corners.map(([, y]) => y))];
  const spots = [
    ...[0.5, 0.35, 0.65, 0.2, 0.8].flatMap((u) =>
      [0.5, 0.3, 0.7, 0.15, 0.85].map((v) => onSheet(place, [length * u, width * v, 0])),
    ),
    ...[4, 8].map((out): Vec2 => [right + out + reach, (low + high) / 2]),
    ...[4, 7, 10, 14].flatMap((out): Vec2[] => [
      [middle, high + out],
      [middle, low - out],
    ]),
  ];
  const boxAt = ([x, y]: Vec2): Box => ({ minX: x - reach, maxX: x + reach, minY: y - 1.5, maxY: y + SMALL });
  const best = bestPlace(room, spots, boxAt);
  if (!best) return [];
  const [x, y] = best;
  room.claim(boxAt(best));
  const word = letters([x, y - SMALL / 2], 'grain', { anchor: 'middle' });
  return [
    word,
    ...[-1, 1].flatMap((sign): Stroke[] => {
      const [from, tip]: readonly [Vec2, Vec2] = [
        [x + sign * (half + 1), y],
        [x + sign * reach, y],
      ];
      return [stroke('dimension', from, tip), arrowHead(tip, from)];
    }),
  ];
}
