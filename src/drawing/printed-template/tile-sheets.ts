import { settledLength, spanOf, type Vec2 } from '../../frame/index.js';
import {
  bestPlace,
  boxesOverlap,
  checkBar,
  clipped,
  type Dimension,
  type DrawingUnits,
  entitiesBox,
  letters,
  moved,
  type Page,
  pageOf,
  pieceInside,
  roomOf,
  rule,
  type Sheet,
  type SheetEntity,
  SMALL,
  type Stroke,
  stampOver,
  textBox,
  textWidth,
  withBody,
} from '../sheet/index.js';
import { freedOnSheet } from './freed-words.js';
import type { TemplateArtwork } from './template-artwork.js';
import { keyFigure } from './template-keys.js';
import { FOOTER, type TilePaper, tileFooter } from './tile-footer.js';
import { tileSeams } from './tile-seams.js';
import { TILE_WINDOW, type Tile, type TilePlan, tilePlan } from './tiling.js';

/** A template with its sheets' plan. */
export interface TiledTemplate {
  readonly artwork: TemplateArtwork;
  readonly plan: TilePlan;
}

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

/** A text moved by as little as it takes to stand wholly on a sheet; between two that are as near, on the first. */
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
  const far = ([x, y]: Vec2): number => settledLength(spanOf(x, y));
  const [dx, dy] = shifts.reduce(
    (best, shift) => (far(shift) < far(best) ? shift : best),
    shifts[0] ?? ([0, 0] as const),
  );
  return dx === 0 && dy === 0 ? text : { ...text, at: [text.at[0] + dx, text.at[1] + dy] };
}

/** The sheets of a tiled template, in the order of their numbers. */
export const tileSheets = ({ artwork, plan }: TiledTemplate, of: TilePaper): readonly Sheet[] =>
  plan.tiles.filter(({ number }) => number !== undefined).map((tile) => tileSheet(artwork, plan, tile, of));

function tileSheet(artwork: TemplateArtwork, plan: TilePlan, tile: Tile, of: TilePaper): Sheet {
  const page = pageOf(of.paper, plan.orientation);
  const laid = pageOf('A4', plan.orientation);
  const own: readonly SheetEntity[] = [
    ...tileFooter(artwork, plan, tile, of, page.live),
    ...(of.set.stamp === undefined ? [] : [stampOver(page, of.set.stamp)]),
  ];
  return Object.assign(withBody(tileBody(artwork, plan, tile, of.set.units, laid), laid, page, own), {
    id: `template-${artwork.board.id}-${tile.number}`,
    title: `${of.set.design}: template ${artwork.board.name}, sheet ${tile.number}`,
    width: page.width,
    height: page.height,
    scale: '1:1',
  });
}

/** What every paper shows of a template on one of its sheets, kept for the next paper. */
function tileBody(
  artwork: TemplateArtwork,
  plan: TilePlan,
  tile: Tile,
  units: DrawingUnits,
  laid: Page,
): readonly SheetEntity[] {
  const bodies = known.get(tile) ?? new Map<DrawingUnits, readonly SheetEntity[]>();
  known.set(tile, bodies);
  const body = bodies.get(units) ?? drawnTile(artwork, plan, tile, units, laid);
  bodies.set(units, body);
  return body;
}

const known = new WeakMap<Tile, Map<DrawingUnits, readonly SheetEntity[]>>();

function drawnTile(
  artwork: TemplateArtwork,
  plan: TilePlan,
  tile: Tile,
  units: DrawingUnits,
  { live }: Page,
): readonly SheetEntity[] {
  const [width, height] = TILE_WINDOW[plan.orientation];
  const { shown } = tile;
  const [w, h] = [shown.maxX - shown.minX, shown.maxY - shown.minY];
  const at: Vec2 = [
    live.minX + (width - w) / 2 - shown.minX,
    live.minY + FOOTER + (height - h) / 2 - shown.minY,
  ];
  const drawn = clipped(artwork.strokes, shown);
  const seams = tileSeams(plan, tile, drawn);
  const measured = ruleOn(tile, checkBar(units), [...drawn, ...seams]);
  const all = [...drawn, ...seams, ...measured];
  const lines = all.filter(({ kind }) => kind !== 'text');
  const keys = keysOn(artwork, tile, lines, units);
  const figures = keys
    .flatMap(({ parts }) => parts)
    .flatMap((one) => (one.kind === 'text' ? [textBox(one)] : []));
  const words = freedOnSheet(
    lines,
    all.filter((one) => one.kind === 'text'),
    figures,
    tile.frame,
  );
  return [
    ...moved(lines, at),
    ...keys.map((key) => ({ ...key, parts: moved(key.parts, at) })),
    ...moved(words, at),
  ];
}

/** A rule along the left side of a sheet, where it runs through least. */
function ruleOn(
  { shown }: Tile,
  { length, words }: ReturnType<typeof checkBar>,
  drawn: readonly Stroke[],
): readonly Stroke[] {
  const spare = Math.max(0, shown.maxY - shown.minY - length - 12);
  const room = roomOf(drawn);
  const places = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0, 1].map((t) =>
    rule([shown.minX + 0.6, shown.minY + spare * t], length, 'y', words),
  );
  return bestPlace(room, places, entitiesBox) ?? places[0]!;
}

/** The figure of every key dimension that runs over this sheet, on the piece of it that is seen. */
function keysOn(
  artwork: TemplateArtwork,
  { shown }: Tile,
  drawn: readonly Stroke[],
  units: DrawingUnits,
): readonly Dimension[] {
  const room = roomOf(drawn);
  return artwork.keys.flatMap((key): Dimension[] => {
    const piece = pieceInside(key.from, key.to, shown);
    if (!piece) return [];
    const text = `${keyFigure(key, units)} ${key.what}`;
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
