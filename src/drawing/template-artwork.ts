import { type Board, standOff } from '../board/index.js';
import type { Vec2 } from '../frame/index.js';
import { bounds, counterClockwise, offset, type Profile, segments } from '../profile/index.js';
import { downhillOf } from './downhill.js';
import { arrowHead, disc, letters, path, SMALL, stroke } from './draw.js';
import { type DrawingUnits, dimensionRows } from './drawing-units.js';
import { entersWideFace } from './feature.js';
import { bestPlace } from './room.js';
import { roomOf } from './room-of.js';
import { STEP } from './running-steps.js';
import type { Stroke, TextStroke } from './sheet.js';
import type { Entity, Layer } from './template.js';
import { partLines } from './template-line.js';
import { type TemplateOptions, templateFeatures } from './template-of.js';
import { type TemplatePlace, templatePlaces } from './template-places.js';
import { type Box, textBox } from './text-width.js';

/** A dimension drawn along a whole side of a template, so that it runs over the joins of its sheets. */
export interface KeyDimension {
  readonly axis: 'x' | 'y';
  readonly from: Vec2;
  readonly to: Vec2;
  /** mm, not rounded. */
  readonly value: number;
  readonly what: string;
}

/** A full-size template as it is printed: strokes in the board's own X and Y, mm. */
export interface TemplateArtwork {
  readonly board: Board;
  /** Names of all boards made with it; those of the second list with template and board turned over. */
  readonly serves: readonly string[];
  readonly turnedOver: readonly string[];
  readonly box: Box;
  readonly strokes: readonly Stroke[];
  /** Pockets and holes: no seam runs through these. */
  readonly avoid: readonly Box[];
  readonly keys: readonly KeyDimension[];
  readonly places: readonly TemplatePlace[];
  /** Each mark with what it means. */
  readonly rows: readonly string[];
  /** How far the line to cut stands inside the part, mm; 0 for a bearing. */
  readonly standOff: number;
  readonly hasDownhill: boolean;
}

export interface ArtworkOptions extends TemplateOptions {
  readonly drawn: DrawingUnits;
  readonly serves?: readonly string[];
  readonly turnedOver?: readonly string[];
}

/** Outside the part the saw line runs, mm: what is left is routed off in one light pass. Common practice, no source: 1.5 to 3. */
export const SAW_OFF = 2;

/** From the part's box to the key dimensions, and beyond them, mm. */
const KEY_OUT = 12;
const MARGIN = 8;

/** How a template's layers are drawn. */
const LINES: Readonly<Record<Layer, 'template' | 'dimension'>> = {
  CUT: 'template',
  POCKET: 'template',
  DRILL: 'template',
  MARK: 'dimension',
  NOTE: 'dimension',
  SCALE: 'dimension',
};

/** Everything a printed template shows besides what {@link templateFeatures} and {@link partLines} give. */
export function templateArtwork(board: Board, options: ArtworkOptions): TemplateArtwork {
  const features = templateFeatures(board, options);
  const part = partLines(board, options);
  const cut = part.flatMap((one) => (one.kind === 'profile' && one.layer === 'CUT' ? [one.profile] : []));
  const cutBox = bounds(cut[0]!);
  const around = bounds(board.outline);
  const places = templatePlaces(board, options.cutter);
  const downhill = downhillOf(board);
  const lines = [...part, ...features.flatMap(({ entities }) => entities)].flatMap(strokesOfEntity);
  const left = Math.min(0, around.minX) - KEY_OUT;
  const below = Math.min(0, around.minY) - KEY_OUT;
  const keys: readonly KeyDimension[] = [
    {
      axis: 'x',
      from: [cutBox.minX, below],
      to: [cutBox.maxX, below],
      value: cutBox.maxX - cutBox.minX,
      what: 'length over the line to cut',
    },
    {
      axis: 'y',
      from: [left, cutBox.minY],
      to: [left, cutBox.maxY],
      value: cutBox.maxY - cutBox.minY,
      what: 'width over the line to cut',
    },
  ];
  const drawn: Stroke[] = [
    ...lines,
    ...sawLines(board),
    ...reference(board),
    ...keys.flatMap(keyLine),
    ...places.flatMap(placeStrokes),
    ...downhill.flatMap(({ at, direction, out, withFeed }) => downhillArrow(at, direction, out, withFeed)),
  ];
  const strokes = freed([...drawn, ...grain(board, drawn)], keys);
  return {
    board,
    serves: options.serves ?? [board.name],
    turnedOver: options.turnedOver ?? [],
    box: {
      minX: left - MARGIN,
      minY: below - MARGIN,
      maxX: Math.max(around.maxX, board.blank.length) + MARGIN + 4,
      maxY: Math.max(around.maxY, board.blank.width) + MARGIN + 4,
    },
    strokes,
    avoid: avoided(board),
    keys,
    places,
    rows: features.map(({ row }) => row),
    standOff: standOff(options),
    hasDownhill: downhill.length > 0,
  };
}

/** A key dimension's figure, both ways where the drawing has both. */
export const keyFigure = ({ value }: KeyDimension, units: DrawingUnits): string =>
  dimensionRows({ mm: Math.round(value / STEP.mm), in: Math.round(value / STEP.in) }, units).join(' ');

/** A template's entity as strokes of a sheet; arcs stay arcs. */
function strokesOfEntity(entity: Entity): readonly Stroke[] {
  const kind = LINES[entity.layer];
  switch (entity.kind) {
    case 'line':
      return [stroke(kind, entity.from, entity.to)];
    case 'circle':
      return [disc(kind, entity.centre, entity.radius)];
    case 'profile':
      return profileStrokes(entity.profile, kind);
    case 'text':
      return [letters(entity.at, entity.text, { rotationDeg: entity.rotationDeg })];
  }
}

const profileStrokes = (profile: Profile, line: 'template' | 'dimension' | 'centre'): readonly Stroke[] =>
  segments(profile).map((piece): Stroke => {
    if (piece.kind === 'line') return stroke(line, piece.from, piece.to);
    const { centre, radius, startDeg, includedDeg, sense } = piece;
    return {
      kind: 'arc',
      line,
      centre,
      radius,
      startDeg: sense === 'clockwise' ? startDeg - includedDeg : startDeg,
      sweepDeg: includedDeg,
    };
  });

/** Where to saw before routing: a little outside the outline, a little inside each opening. */
const sawLines = (board: Board): readonly Stroke[] =>
  [
    ...offset(counterClockwise(board.outline), SAW_OFF),
    ...board.openings.flatMap(({ outline }) => offset(counterClockwise(outline), -SAW_OFF)),
  ].flatMap((loop) => profileStrokes(loop, 'centre'));

/** The two sides everything is measured from, named along them. */
function reference({ blank: { length, width } }: Board): readonly Stroke[] {
  const off = 4;
  return [
    stroke('dimension', [0, -off], [length, -off]),
    stroke('dimension', [-off, 0], [-off, width]),
    letters([length / 2, -off - 1 - SMALL], 'reference edge', { anchor: 'middle' }),
    letters([-off - 1, width / 2], 'reference end', { anchor: 'middle', rotationDeg: 90 }),
  ];
}

function keyLine({ axis, from, to }: KeyDimension): readonly Stroke[] {
  const tick = (p: Vec2): Stroke =>
    axis === 'x'
      ? stroke('dimension', [p[0], p[1] - 2], [p[0], p[1] + 2])
      : stroke('dimension', [p[0] - 2, p[1]], [p[0] + 2, p[1]]);
  return [stroke('dimension', from, to), tick(from), tick(to), arrowHead(from, to), arrowHead(to, from)];
}

function placeStrokes({ kind, at: [x, y], diameter }: TemplatePlace): readonly Stroke[] {
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
function downhillArrow(at: Vec2, direction: Vec2, out: Vec2, withFeed: boolean): readonly Stroke[] {
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
function grain(board: Board, drawn: readonly Stroke[]): readonly Stroke[] {
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

/** What no seam is to cross: windows and holes in a wide face; of what enters an edge, its centre and end marks. */
const avoided = (board: Board): readonly Box[] => {
  const round = ([x, y]: Vec2, rx: number, ry: number): Box => ({
    minX: x - rx,
    maxX: x + rx,
    minY: y - ry,
    maxY: y + ry,
  });
  return [
    ...[...board.mortises, ...board.slots].flatMap(({ at, face, length, width }) => {
      const [x, y] = at.origin;
      const [half, r] = [(length - width) / 2, width / 2];
      if (entersWideFace(face))
        return [round([x, y], Math.abs(at.x[0]) * half + r, Math.abs(at.x[1]) * half + r)];
      return [-length / 2, 0, length / 2].map((run) => round([x + at.x[0] * run, y + at.x[1] * run], 0, 0));
    }),
    ...board.holes.map(({ at, diameter, counterbore, countersink }) => {
      const r = Math.max(diameter, counterbore?.diameter ?? 0, countersink?.diameter ?? 0) / 2;
      return round([at.origin[0], at.origin[1]], r, r);
    }),
  ];
};

/** How far a label may move to stand free, mm. */
const STRAY: readonly number[] = [0, 2, 4, 6, 9, 12, 16];

/** Words moved a little where they would stand on other words or on lines. */
function freed(strokes: readonly Stroke[], keys: readonly KeyDimension[]): readonly Stroke[] {
  const texts = strokes.filter((one) => one.kind === 'text');
  const room = roomOf(strokes.filter((one) => one.kind !== 'text'));
  // the figure of a key dimension may stand anywhere along it
  for (const { axis, from, to } of keys)
    room.claim(
      axis === 'x'
        ? { minX: from[0], maxX: to[0], minY: from[1] - 5, maxY: from[1] }
        : { minX: from[0] - 5, maxX: from[0], minY: from[1], maxY: to[1] },
    );
  const placed = new Map<Stroke, Stroke>();
  for (const text of texts) {
    const places = STRAY.flatMap((reach) =>
      Array.from({ length: reach === 0 ? 1 : 12 }, (_, i): TextStroke => {
        const turn = (i * Math.PI) / 6;
        return {
          ...text,
          at: [text.at[0] + reach * Math.cos(turn), text.at[1] + reach * Math.sin(turn)],
        };
      }),
    );
    const best = bestPlace(room, places, textBox) ?? text;
    room.claim(textBox(best));
    placed.set(text, best);
  }
  return strokes.map((one) => placed.get(one) ?? one);
}
