import type { Bevel, Board } from '../../board/index.js';
import { dot, type Vec2 } from '../../frame/index.js';
import { trimmed } from '../../length/index.js';
import { longSides } from '../../shop/index.js';
import { PARALLEL_DEG, SAME_POINT } from '../../tolerances.js';
import { bevelAngle } from './bevel-angle.js';
import type { Feature } from './feature.js';
import { lineInside } from './line-inside.js';
import { from, inPlane, LETTER, LETTER_WIDTH, line, readingDeg, words } from './strokes.js';
import type { Dashing, Entity, TextEntity } from './template.js';

/** Where a bevel leaves each wide face: two parallel lines, or one for a cut square to the faces. */
export function bevelFeature(mark: string, bevel: Bevel, board: Board): Feature {
  const offSquareDeg = (Math.asin(Math.min(1, Math.abs(bevel.normal[2]))) * 180) / Math.PI;
  const { deg, from: base } = bevelAngle(bevel);
  const angle = `${trimmed(deg, 2)}°`;
  if (90 - offSquareDeg < PARALLEL_DEG) {
    return { entities: [], mark, row: `bevel ${bevel.id} lies flat to the faces and has no line here` };
  }
  if (offSquareDeg < PARALLEL_DEG) {
    const cut = linesAt(bevel, board, 0);
    return {
      entities: labelled(cut, mark, 0),
      mark,
      row: `cut ${bevel.id}, square to the faces`,
    };
  }
  const onReference = linesAt(bevel, board, 0);
  const onOpposite = linesAt(bevel, board, board.blank.thickness);
  // the labels stand to either side of the pair, at different heights of it, so that they cannot cover each other
  const outward = bevel.normal[2] > 0 ? 1 : -1;
  return {
    entities: [
      ...labelled(onReference, `${mark} reference face ${angle}`, outward, 'far'),
      ...labelled(onOpposite, `${mark} opposite face ${angle}`, -outward),
    ],
    mark,
    row: `bevel ${bevel.id}, ${angle} ${base}, ${reach(onReference, onOpposite)}, the wood is longer on the ${longSides(bevel.normal)[0]}`,
  };
}

type Pieces = readonly (readonly [Vec2, Vec2])[];

/** The bevel's plane at a height over the reference face, inside the outline and the bevel's own column, mm. */
export function linesAt(bevel: Bevel, board: Board, z: number): Pieces {
  const [nx, ny, nz] = bevel.normal;
  const flat = Math.hypot(nx, ny);
  const out = inPlane(bevel.normal);
  const distance = (dot(bevel.normal, bevel.point) - nz * z) / flat;
  const columns = bevel.within ? [board.outline, bevel.within] : [board.outline];
  return lineInside(columns, [out[0] * distance, out[1] * distance], [-out[1], out[0]]);
}

/** @param side 1 writes away from the wood that stays, -1 toward it; the longest piece carries the words */
function labelled(pieces: Pieces, text: string, side: number, dashing?: Dashing): Entity[] {
  const [longest] = [...pieces].sort((a, b) => run(b) - run(a) || middleHeight(b) - middleHeight(a));
  const lines = pieces.map(([start, end]) => line('MARK', start, end, dashing));
  return longest === undefined ? lines : [...lines, label(longest, text, side)];
}

type Piece = Pieces[number];

/** Rounded, so that of two equal pieces the place decides and not noise. */
const run = ([start, end]: Piece): number =>
  Math.round(Math.hypot(end[0] - start[0], end[1] - start[1]) / SAME_POINT) * SAME_POINT;

const middleHeight = ([start, end]: Piece): number => Math.round((start[1] + end[1]) / 2);

function label(piece: Piece, text: string, side: number): TextEntity {
  const [start, end] = piece;
  const deg = readingDeg(inPlane([end[0] - start[0], end[1] - start[1], 0]));
  const reading: Vec2 = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  const alongReading = (p: Vec2) => (p[0] - start[0]) * reading[0] + (p[1] - start[1]) * reading[1];
  // pieces run with the wood on their left; letters stand left of the way they are read
  const above = alongReading(end) < 0 === side > 0;
  // the far end of the line, where a mortise's marks are less likely
  const letters = text.length * LETTER * LETTER_WIDTH;
  const far = Math.max(alongReading(start), alongReading(end));
  const first = run(piece) > letters ? far - letters : far - (run(piece) + letters) / 2;
  const clear = side > 0 ? LETTER : LETTER / 2;
  return words(from(start, reading, first, above ? clear : -clear - LETTER), text, LETTER, deg);
}

function reach(onReference: Pieces, onOpposite: Pieces): string {
  if (onReference.length > 0 && onOpposite.length > 0) return 'one line on each face';
  if (onReference.length > 0) return 'meets the reference face only';
  return onOpposite.length > 0 ? 'meets the opposite face only' : 'meets neither face';
}
