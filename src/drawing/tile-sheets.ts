import type { Vec2 } from '../frame/index.js';
import { clipped, pieceInside } from './clip.js';
import { disc, letters, path, SMALL, stroke } from './draw.js';
import { moved } from './moved.js';
import { type Paper, pageOf } from './page.js';
import { type PrintScale, printScaleWords } from './print-scale.js';
import { bestPlace } from './room.js';
import { roomOf } from './room-of.js';
import { rule } from './rule.js';
import { printSteps, STEP } from './running-steps.js';
import type { Dimension, Sheet, SheetEntity, Stroke } from './sheet.js';
import { keyFigure, type TemplateArtwork } from './template-artwork.js';
import { type Box, boxesOverlap, fittedText, textBox, textWidth } from './text-width.js';
import { TILE_WINDOW, type Tile, type TilePlan, tilePlan } from './tiling.js';
import { type SheetSet, stampOver } from './title-block.js';

/** A template with its sheets' plan. */
export interface TiledTemplate {
  readonly artwork: TemplateArtwork;
  readonly plan: TilePlan;
}

/** Below the window, mm. */
const FOOTER = 14;

/** Radius of a match mark's ring and reach of its cross, mm. */
const RING = 3.2;
const CROSS = 4.6;

/** Parts a template into sheets; words that would fall between two sheets are moved onto one. */
export function tiledTemplate(artwork: TemplateArtwork): TiledTemplate {
  const drawn = artwork.strokes.filter(({ kind }) => kind !== 'text');
  const words = artwork.strokes.flatMap((one) => (one.kind === 'text' ? [textBox(one)] : []));
  const plan = tilePlan({
    box: artwork.box,
    avoid: artwork.avoid,
    inked: (box) => clipped(drawn, box).length > 0,
    worded: (box) => words.some((one) => boxesOverlap(one, box)),
  });
  const strokes = artwork.strokes.map((one) => (one.kind === 'text' ? onOneTile(one, plan) : one));
  return { artwork: { ...artwork, strokes }, plan };
}

/** A text moved by as little as it takes to stand wholly on a sheet. */
function onOneTile(text: Extract<Stroke, { kind: 'text' }>, { tiles }: TilePlan): Stroke {
  const box = textBox(text);
  const shifts = tiles
    .filter(({ number }) => number !== undefined)
    .map(({ shown }): Vec2 => {
      const along = (min: number, max: number, low: number, high: number) =>
        min < low ? low - min : max > high ? high - max : 0;
      return [
        along(box.minX, box.maxX, shown.minX + 0.1, shown.maxX - 0.1),
        along(box.minY, box.maxY, shown.minY + 0.1, shown.maxY - 0.1),
      ];
    });
  const [dx, dy] = shifts.reduce(
    (best, shift) => (Math.hypot(shift[0], shift[1]) < Math.hypot(best[0], best[1]) ? shift : best),
    shifts[0] ?? ([0, 0] as const),
  );
  return dx === 0 && dy === 0 ? text : { ...text, at: [text.at[0] + dx, text.at[1] + dy] };
}

/** What the sheets of one template are told besides what they show. */
export interface TilePaper {
  readonly paper: Paper;
  readonly set: SheetSet;
  /** Of the whole set, before the first sheet of this template, and all. */
  readonly before: number;
  readonly total: number;
  readonly printScale?: PrintScale;
}

/** The sheets of a tiled template, in the order of their numbers. */
export const tileSheets = ({ artwork, plan }: TiledTemplate, of: TilePaper): readonly Sheet[] =>
  plan.tiles.filter(({ number }) => number !== undefined).map((tile) => tileSheet(artwork, plan, tile, of));

function tileSheet(artwork: TemplateArtwork, plan: TilePlan, tile: Tile, of: TilePaper): Sheet {
  const page = pageOf(of.paper, plan.orientation);
  const [width, height] = TILE_WINDOW[plan.orientation];
  const { shown } = tile;
  const [w, h] = [shown.maxX - shown.minX, shown.maxY - shown.minY];
  const { live } = page;
  const at: Vec2 = [
    live.minX + (width - w) / 2 - shown.minX,
    live.minY + FOOTER + (height - h) / 2 - shown.minY,
  ];
  const drawn = clipped(artwork.strokes, shown);
  const keys = keysOn(artwork, tile, drawn, of);
  const entities: readonly SheetEntity[] = [
    ...moved(drawn, at),
    ...keys.map((key) => ({ ...key, parts: moved(key.parts, at) })),
    ...moved(seams(plan, tile, [...drawn, ...keys.flatMap(({ parts }) => parts)]), at),
    ...rule([at[0] + shown.minX + 0.6, at[1] + shown.minY + Math.max(0, (h - 100) / 2)], 100, 'y', '100 mm'),
    ...footer(artwork, plan, tile, of, live),
    ...(of.set.stamp === undefined ? [] : [stampOver(page, of.set.stamp)]),
  ];
  return {
    id: `template-${artwork.board.id}-${tile.number}`,
    title: `${of.set.design}: template ${artwork.board.name}, sheet ${tile.number}`,
    width: page.width,
    height: page.height,
    scale: '1:1',
    entities,
  };
}

/** The figure of every key dimension that runs over this sheet, on the piece of it that is seen. */
function keysOn(
  artwork: TemplateArtwork,
  { shown }: Tile,
  drawn: readonly Stroke[],
  { set }: TilePaper,
): readonly Dimension[] {
  const room = roomOf(drawn);
  return artwork.keys.flatMap((key): Dimension[] => {
    const piece = pieceInside(key.from, key.to, shown);
    if (!piece) return [];
    const text = `${keyFigure(key, set.units)} ${key.what}`;
    const run = Math.hypot(piece[1][0] - piece[0][0], piece[1][1] - piece[0][1]);
    const half = textWidth(text, SMALL) / 2 + 2;
    if (run < 2 * half) return [];
    const at = (t: number): Vec2 => [
      piece[0][0] + (piece[1][0] - piece[0][0]) * t,
      piece[0][1] + (piece[1][1] - piece[0][1]) * t,
    ];
    const ends = [half / run, 1 - half / run] as const;
    const places = [0.5, 0.4, 0.6, 0.25, 0.75, 0, 1].map((t) => {
      const [x, y] = at(ends[0] + (ends[1] - ends[0]) * t);
      return key.axis === 'x'
        ? letters([x, y - 1 - SMALL], text, { anchor: 'middle' })
        : letters([x - 1, y], text, { anchor: 'middle', rotationDeg: 90 });
    });
    const words = bestPlace(room, places, textBox) ?? places[0]!;
    return [{ kind: 'dimension', what: key.what, value: key.value, unit: 'mm', parts: [words] }];
  });
}

/** Seams to printed neighbours as lines to cut, with their match marks and where they lead. */
function seams({ tiles, marks }: TilePlan, tile: Tile, drawn: readonly Stroke[]): readonly Stroke[] {
  const { frame, shown } = tile;
  const rings = marks
    .filter(({ sheets }) => sheets.some((number) => number === tile.number))
    .flatMap(({ name, at: [x, y] }): Stroke[] => [
      disc('dimension', [x, y], RING),
      stroke('dimension', [x - CROSS, y], [x + CROSS, y]),
      stroke('dimension', [x, y - CROSS], [x, y + CROSS]),
      ...nameBeside(name, [x, y], tile),
    ]);
  const room = roomOf([...drawn, ...rings]);
  const sides = [
    { row: 0, column: -1, upright: true, at: frame.minX, inwards: 1 },
    { row: 0, column: 1, upright: true, at: frame.maxX, inwards: -1 },
    { row: -1, column: 0, upright: false, at: frame.maxY, inwards: -1 },
    { row: 1, column: 0, upright: false, at: frame.minY, inwards: 1 },
  ];
  const lines = sides.flatMap(({ row, column, upright, at, inwards }): Stroke[] => {
    const to = tiles.find((one) => one.row === tile.row + row && one.column === tile.column + column)?.number;
    if (to === undefined) return [];
    const point = (along: number, across: number): Vec2 => (upright ? [across, along] : [along, across]);
    const [low, high] = upright ? [shown.minY, shown.maxY] : [shown.minX, shown.maxX];
    // letters stand on the side that stays; those of an upright seam read from the right
    const foot = at + inwards * 1 + (inwards === (upright ? 1 : -1) ? inwards * SMALL : 0);
    const words = [0.5, 0.45, 0.55, 0.4, 0.6, 0.35, 0.65, 0.15, 0.85].map((t) =>
      letters(point(low + (high - low) * t, foot), `seam to sheet ${to}`, {
        anchor: 'middle',
        rotationDeg: upright ? 90 : 0,
      }),
    );
    const best = bestPlace(room, words, textBox) ?? words[0]!;
    room.claim(textBox(best));
    return [stroke('hidden', point(low, at), point(high, at)), best];
  });
  return [...rings, ...lines];
}

/** A mark's letters on the side of the seam that stays when the sheet is cut. */
function nameBeside(name: string, [x, y]: Vec2, { frame }: Tile): readonly Stroke[] {
  if (Math.abs(x - frame.minX) < 1e-6) return [letters([x + CROSS + 0.5, y + 1], name, { bold: true })];
  if (Math.abs(x - frame.maxX) < 1e-6)
    return [letters([x - CROSS - 0.5, y + 1], name, { bold: true, anchor: 'end' })];
  const up = Math.abs(y - frame.minY) < 1e-6;
  return [letters([x + 1, up ? y + CROSS + 0.5 : y - CROSS - 0.5 - SMALL], name, { bold: true })];
}

/** Rule, what the sheet is, how it is joined, and where it lies in the whole. */
function footer(
  artwork: TemplateArtwork,
  plan: TilePlan,
  tile: Tile,
  of: TilePaper,
  live: Box,
): readonly Stroke[] {
  const { set, paper, printScale } = of;
  const { minX, maxX, minY } = live;
  const count = plan.tiles.filter(({ number }) => number !== undefined).length;
  const page = of.before + tile.number!;
  const width = tile.frame.maxX - tile.frame.minX;
  const height = tile.frame.maxY - tile.frame.minY;
  const units = set.units === 'in' ? 'in' : 'mm';
  const sizes = [width, height].map((mm) => printSteps(Math.round(mm / STEP[units]), units)).join(' × ');
  const frame = units === 'mm' ? `${sizes} mm` : sizes;
  const mapWidth = 34;
  const room = maxX - minX - mapWidth - 2;
  const corrected = printScale ? `, corrected for ${printScaleWords(printScale)}` : '';
  const row = (y: number, text: string, bold = false): Stroke => {
    const fitted = fittedText(text, bold ? room / 1.2 : room, [SMALL]);
    return letters([minX, minY + y], fitted.text, bold ? { bold } : {});
  };
  return [
    stroke('table', [minX, minY + FOOTER - 0.2], [maxX, minY + FOOTER - 0.2]),
    row(10.5, `${artwork.board.name}: template, sheet ${tile.number} of ${count}`, true),
    row(
      7.2,
      `${set.design}, rev. ${set.revision}, ${paper}, ${set.number}-${page}, page ${page}/${of.total}, full size${corrected}`,
    ),
    row(
      3.9,
      count > 1
        ? `Cut a seam, lay it on its neighbour, cross on cross. Frame ${frame}`
        : `Print at 100 %; measure both rules before use. Frame ${frame}`,
    ),
    ...rule([minX, minY + 0.6], 100, 'x', '100 mm'),
    ...map(plan, tile, { minX: maxX - mapWidth, maxX, minY: minY + 0.4, maxY: minY + FOOTER - 1 }),
  ];
}

/** All sheets small, blank ones empty, this one dark. */
export function map({ tiles, rows, columns }: TilePlan, here: Tile | undefined, box: Box): readonly Stroke[] {
  const side = Math.min((box.maxX - box.minX) / columns, (box.maxY - box.minY) / rows, 8);
  const left = box.maxX - side * columns;
  return tiles.flatMap((tile): Stroke[] => {
    const [x, y] = [left + tile.column * side, box.maxY - (tile.row + 1) * side];
    const corners = path(
      'dimension',
      [
        [x, y],
        [x + side, y],
        [x + side, y + side],
        [x, y + side],
      ],
      true,
    );
    const text = tile.number === undefined ? '' : String(tile.number);
    const fits = side >= SMALL + 1 && textWidth(text, SMALL) <= side - 0.6;
    const dark = here?.number !== undefined && tile.number === here.number;
    return [
      corners,
      ...(dark ? [ring(x, y, side)] : []),
      ...(fits && text !== ''
        ? [letters([x + side / 2, y + (side - SMALL) / 2], text, { anchor: 'middle', bold: dark })]
        : []),
    ];
  });
}

/** A second, heavier line round this sheet's cell: legible over its number, as a dark cell would not be. */
const ring = (x: number, y: number, side: number): Stroke =>
  path(
    'frame',
    [
      [x + 0.5, y + 0.5],
      [x + side - 0.5, y + 0.5],
      [x + side - 0.5, y + side - 0.5],
      [x + 0.5, y + side - 0.5],
    ],
    true,
  );
