import type { Vec2 } from '../../frame/index.js';
import { obround, segments } from '../../profile/index.js';
import type { SetupCard } from '../../shop/index.js';
import { chainRow, type RowPlace, rowBeside } from '../dimension/index.js';
import type { DrawnFigure } from '../flow/index.js';
import {
  type Box,
  type Dimension,
  type DrawingUnits,
  entitiesBox,
  letters,
  path,
  type SheetEntity,
  type Stroke,
  stroke,
} from '../sheet/index.js';

/** Drawn thickness of a rail and of a stop, mm at full size: their real one does not matter here. */
const RAIL = 18;
const STOP = 10;

/** The largest set-up, mm on the sheet, and the largest figure with its dimensions beside it: an upright page's width. */
const MOST: readonly [width: number, height: number] = [150, 66];
const WIDEST = 180;

/**
 * A set-up seen from above, to scale, the person at the lower side: mortise, work, rails or guide, stops, and what is set.
 */
export function cardFigure(card: SetupCard, units: DrawingUnits): DrawnFigure {
  const { near, far, reach } = sizesOf(card);
  const factor = Math.min(MOST[0] / (2 * reach), MOST[1] / (near + far + 2 * RAIL));
  const figure = figureAt(card, units, factor);
  // what stands beside the set-up keeps its size, so the set-up gives way
  const over = figure.width - WIDEST;
  return over <= 0 ? figure : figureAt(card, units, factor - over / (2 * reach));
}

/** @param factor the scale: mm on the sheet for each mm */
function figureAt(card: SetupCard, units: DrawingUnits, factor: number): DrawnFigure {
  const { near, far, reach, workNear, workFar } = sizesOf(card);
  const [low, high] = [near + RAIL, far + RAIL];
  const draw = (at: Vec2): readonly SheetEntity[] => {
    const p = (x: number, y: number): Vec2 => [at[0] + factor * x, at[1] + factor * y];
    const box = (
      x1: number,
      y1: number,
      x2: number,
      y2: number,
      line: 'visible' | 'hidden' | 'neighbour',
    ): Stroke => path(line, [p(x1, y1), p(x2, y1), p(x2, y2), p(x1, y2)], true);
    const rail = (from: number, to: number, words: string): readonly Stroke[] => [
      box(-reach, from, reach, to, 'visible'),
      letters(p(-reach * 0.82, (from + to) / 2), words),
    ];
    const half = card.travelling.along / 2;
    const plate = card.stopDistance - half;
    const border: Box = {
      minX: p(-reach, 0)[0],
      maxX: p(reach, 0)[0],
      minY: p(0, -low)[1],
      maxY: p(0, high)[1],
    };
    // the near rail's distance on the left, what lies beyond the cutter on the right
    const [left, right] = [rowBeside(border, 'left'), rowBeside(border, 'right')];
    const rails = [
      ...(card.nearRail ? [{ value: -card.nearRail.distance, what: 'near rail' }] : []),
      ...(card.farRail ? [{ value: card.farRail.distance, what: 'far rail' }] : []),
      ...(card.guideOffset === undefined ? [] : [{ value: card.guideOffset, what: "guide board's edge" }]),
    ];
    const stops = card.window
      ? []
      : [
          { value: -card.stopDistance, what: 'left stop' },
          { value: card.stopDistance, what: 'right stop' },
        ];
    return [
      ...(workNear === undefined || workFar === undefined
        ? []
        : [
            box(-reach * 0.97, -workNear, reach * 0.97, workFar, 'neighbour'),
            letters(p(reach * 0.62, (workFar - workNear) / 2 - 2), 'work'),
          ]),
      ...(card.nearRail ? rail(-near - RAIL, -near, 'near rail') : []),
      ...(card.farRail ? rail(far, far + RAIL, 'far rail') : []),
      ...(card.guideOffset === undefined
        ? []
        : rail(card.guideOffset, card.guideOffset + RAIL, 'guide board')),
      ...(card.window
        ? []
        : [-1, 1].map((side) =>
            path(
              'visible',
              [
                p(side * card.stopDistance, -Math.min(low, 30)),
                p(side * (card.stopDistance + STOP), -Math.min(low, 30)),
                p(side * (card.stopDistance + STOP), Math.min(high, 30)),
                p(side * card.stopDistance, Math.min(high, 30)),
              ],
              true,
            ),
          )),
      // what travels, at the end of its way to the left
      ...(card.window
        ? []
        : [
            box(
              -plate - half,
              -(card.guideOffset ?? Math.min(near, 24)),
              -plate + half,
              card.guideOffset ?? Math.min(far, 24),
              'hidden',
            ),
          ]),
      ...mortise(card, p, factor),
      stroke('centre', p(0, -low), p(0, high)),
      stroke('centre', p(-reach, 0), p(reach, 0)),
      ...rails.flatMap(({ value, what }) =>
        single(
          value < 0 ? left : right,
          6,
          [0, value],
          what,
          (at) => (value < 0 ? left : right).at(p(0, at)[1], -1),
          units,
        ),
      ),
      ...stops.flatMap(({ value, what }) =>
        single(rowBeside(border, 'below'), 6, [0, value], what, (at) => p(at, -low), units),
      ),
      ...chainRow(
        rowBeside(border, 'above'),
        5,
        [-1, 1].map((side) => ({
          value: (side * card.mortiseLength) / 2,
          what: 'end of the mortise',
          point: p((side * card.mortiseLength) / 2, high),
        })),
        units,
      ).dimensions,
    ];
  };
  const box = entitiesBox(draw([0, 0]));
  return {
    kind: 'drawn',
    width: box.maxX - box.minX,
    height: box.maxY - box.minY + 2,
    draw: ([x, y]) => draw([x - box.minX, y - box.minY]),
  };
}

/** One distance from the cutter's centre: each is set by itself and is rounded by itself, so that it reads as on its card. */
function single(
  place: RowPlace,
  out: number,
  ends: readonly [number, number],
  what: string,
  pointAt: (value: number) => Vec2,
  units: DrawingUnits,
): readonly Dimension[] {
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  return chainRow(
    place,
    out,
    [
      { value: 0, what: 'cutter', point: pointAt(low) },
      { value: high - low, what, point: pointAt(high) },
    ],
    units,
  ).dimensions;
}

/** How far everything reaches from the cutter's centre, mm. */
function sizesOf(card: SetupCard) {
  const { nearRail, farRail, guideOffset } = card;
  const half = card.travelling.along / 2;
  const near = nearRail?.distance ?? guideOffset ?? 28;
  const far = farRail?.distance ?? (guideOffset === undefined ? 28 : guideOffset);
  return {
    near,
    far,
    workNear: nearRail?.toWork,
    workFar: farRail?.toWork ?? (nearRail ? 40 : undefined),
    reach: card.window ? Math.max(half, card.mortiseLength) : card.stopDistance + STOP + 8,
  };
}

function mortise(card: SetupCard, p: (x: number, y: number) => Vec2, factor: number): readonly Stroke[] {
  return segments(obround({ length: card.mortiseLength, width: card.cutter })).map((piece): Stroke => {
    if (piece.kind === 'line') return stroke('visible', p(...piece.from), p(...piece.to));
    const { centre, radius, startDeg, includedDeg, sense } = piece;
    return {
      kind: 'arc',
      line: 'visible',
      centre: p(...centre),
      radius: radius * factor,
      startDeg: sense === 'clockwise' ? startDeg - includedDeg : startDeg,
      sweepDeg: includedDeg,
    };
  });
}
