import type { Board } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import { bounds, counterClockwise, offset } from '../../profile/index.js';
import {
  arrowHead,
  type Box,
  bestPlace,
  disc,
  letters,
  path,
  roomOf,
  SMALL,
  type Stroke,
  stroke,
  type TextStroke,
} from '../sheet/index.js';
import type { KeyDimension } from './template-keys.js';
import type { TemplatePlace } from './template-places.js';
import { profileStrokes } from './template-strokes.js';

/** Outside the part the saw line runs, mm: what is left is routed off in one light pass. Common practice, no source: 1.5 to 3. */
export const SAW_OFF = 2;

/** Where to saw before routing: a little outside the outline, a little inside each opening. */
export const sawLines = (board: Board): readonly Stroke[] =>
  [
    ...offset(counterClockwise(board.outline), SAW_OFF),
    ...board.openings.flatMap(({ outline }) => offset(counterClockwise(outline), -SAW_OFF)),
  ].flatMap((loop) => profileStrokes(loop, 'centre'));

/** The two sides everything is measured from, named along them. */
export function reference({ blank: { length, width } }: Board): readonly Stroke[] {
  const off = 4;
  return [
    stroke('dimension', [0, -off], [length, -off]),
    stroke('dimension', [-off, 0], [-off, width]),
    letters([length / 2, -off - 1 - SMALL], 'reference edge', { anchor: 'middle' }),
    letters([-off - 1, width / 2], 'reference end', { anchor: 'middle', rotationDeg: 90 }),
  ];
}

/** The line of a key dimension; its figure stands on every sheet it runs over. */
export function keyLine({ axis, from, to }: KeyDimension): readonly Stroke[] {
  const tick = (p: Vec2): Stroke =>
    axis === 'x'
      ? stroke('dimension', [p[0], p[1] - 2], [p[0], p[1] + 2])
      : stroke('dimension', [p[0] - 2, p[1]], [p[0] + 2, p[1]]);
  return [stroke('dimension', from, to), tick(from), tick(to), arrowHead(from, to), arrowHead(to, from)];
}

/** A pin as a cross in a ring, a screw as an X in one. */
export function placeStrokes({ kind, at: [x, y], diameter }: TemplatePlace): readonly Stroke[] {
  const reach = diameter / 2 + 2;
  const arm = kind === 'pin' ? reach : reach * Math.SQRT1_2;
  const cross: readonly Stroke[] =
    kind === 'pin'
      ? [stroke('dimension', [x - arm, y], [x + arm, y]), stroke('dimension', [x, y - arm], [x, y + arm])]
      : [
          stroke('dimension', [x - arm, y - arm], [x + arm, y + arm]),
          stroke('dimension', [x - arm, y + arm], [x + arm, y - arm]),
        ];
  return [disc('dimension', [x, y], diameter / 2), ...cross, letters([x + reach + 0.5, y - reach - 1], kind)];
}

/** An arrow inside the edge; filled where the router goes that way as it lies, open where the board is turned over for it. */
export function downhillArrow(at: Vec2, direction: Vec2, out: Vec2, withFeed: boolean): readonly Stroke[] {
  const inside = (along: number): Vec2 => [
    at[0] - out[0] * 5 + direction[0] * along,
    at[1] - out[1] * 5 + direction[1] * along,
  ];
  const head = arrowHead(inside(9), inside(0), 4);
  return [
    stroke('dimension', inside(-9), inside(withFeed ? 9 : 5)),
    withFeed ? head : { ...path('dimension', head.points, true), fill: 'paper' as const },
  ];
}

/** The direction of the grain, where it covers nothing. */
export function grainArrow(board: Board, drawn: readonly Stroke[]): readonly Stroke[] {
  const { minX, minY, maxX, maxY } = bounds(board.outline);
  const half = Math.min(30, (maxX - minX) / 4);
  const room = roomOf(drawn);
  const places = [0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85].flatMap((v) =>
    [0.5, 0.3, 0.7, 0.2, 0.8].map((u): Vec2 => [minX + (maxX - minX) * u, minY + (maxY - minY) * v]),
  );
  const boxAt = ([x, y]: Vec2): Box => ({ minX: x - half, maxX: x + half, minY: y - 2, maxY: y + 6 });
  const [x, y] = bestPlace(room, places, boxAt) ?? places[0]!;
  const words: TextStroke = letters([x, y + 1.5], 'grain', { height: 3.5, anchor: 'middle' });
  return [
    stroke('template', [x - half, y], [x + half, y]),
    arrowHead([x - half, y], [x, y], 4),
    arrowHead([x + half, y], [x, y], 4),
    words,
  ];
}
