import { type Board, standOff } from '../../board/index.js';
import { bounds } from '../../profile/index.js';
import type { Box, DrawingUnits, Stroke } from '../sheet/index.js';
import { downhillOf, partLines, type TemplateOptions, templateFeatures } from '../template/index.js';
import { freed } from './freed-words.js';
import { seamKeepOffs } from './seam-keep-offs.js';
import type { KeyDimension } from './template-keys.js';
import { downhillArrow, grainArrow, keyLine, placeStrokes, reference, sawLines } from './template-marks.js';
import { type TemplatePlace, templatePlaces } from './template-places.js';
import { strokesOfEntity } from './template-strokes.js';

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
  readonly rows: readonly { readonly mark: string; readonly meaning: string }[];
  /** How far the line to cut stands inside the part, mm; 0 for a bearing. */
  readonly standOff: number;
  readonly hasDownhill: boolean;
}

export interface ArtworkOptions extends TemplateOptions {
  readonly drawn: DrawingUnits;
  readonly serves?: readonly string[];
  readonly turnedOver?: readonly string[];
}

/** From the part's box to the key dimensions, and beyond them, mm. */
const KEY_OUT = 12;
const MARGIN = 8;

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
  const strokes = freed([...drawn, ...grainArrow(board, drawn)], keys);
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
    avoid: seamKeepOffs(board),
    keys,
    places,
    rows: features.map(({ mark, row }) => ({ mark, meaning: row })),
    standOff: standOff(options),
    hasDownhill: downhill.length > 0,
  };
}
