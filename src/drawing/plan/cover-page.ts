import type { Vec2 } from '../../frame/index.js';
import type { Solids } from '../../solid/index.js';
import { drawableOf } from '../board/index.js';
import {
  type Draft,
  type DrawingUnits,
  fittedText,
  letters,
  type Paper,
  pageOf,
  type SheetEntity,
  SMALL,
  sizeWords,
  wrappedText,
} from '../sheet/index.js';
import { type View, viewBox, viewLines } from '../view/index.js';

/** What the cover tells. */
export interface CoverParts {
  readonly solids: Solids;
  /** Isometric, as it is seen put together. */
  readonly picture: View;
  /** mm: width (x), depth (y), height (z). */
  readonly size: readonly [number, number, number];
  /** One sentence: what it makes. */
  readonly summary: string;
  readonly units: DrawingUnits;
  /** Sections with the page each begins on. */
  readonly contents: readonly { readonly title: string; readonly page: number }[];
}

/** Height of the picture's room, mm. */
const PICTURE = 92;

/** The first page: picture, overall size, what it is for, contents, and the caution. */
export function coverPage(parts: CoverParts, paper: Paper): Draft {
  const page = pageOf(paper, 'portrait');
  const area = drawableOf(page);
  const { design } = parts.solids;
  const middle = (area.minX + area.maxX) / 2;
  const room = area.maxX - area.minX;
  // bold letters are wider than the plain ones a fit is reckoned with
  const title = fittedText(design.title, (room - 8) / 1.27, [10, 7, 5, 3.5]);
  const entities: SheetEntity[] = [
    letters([area.minX + 4, area.maxY - 13], title.text, { height: title.height, bold: true }),
  ];
  let y = area.maxY - 22;
  const write = (text: string, bold = false): void => {
    for (const row of wrappedText(text, room - 8, SMALL, bold)) {
      entities.push(letters([area.minX + 4, y], row, bold ? { bold } : {}));
      y -= 4.4;
    }
  };
  write(parts.summary);
  y -= 1.5;
  const [width, depth, height] = parts.size;
  write(
    `Overall: ${sizeWords(width, parts.units)} wide, ${sizeWords(depth, parts.units)} deep, ${sizeWords(height, parts.units)} high.`,
    true,
  );
  y -= 2;
  const box = viewBox(parts.picture);
  const factor = Math.min((room - 30) / (box.maxX - box.minX), PICTURE / (box.maxY - box.minY));
  const at: Vec2 = [middle - (factor * (box.minX + box.maxX)) / 2, y - factor * box.maxY];
  entities.push(...viewLines(parts.picture, { at, factor }));
  y -= factor * (box.maxY - box.minY) + 9;
  const columns = 2;
  const perColumn = Math.ceil(parts.contents.length / columns);
  const columnWidth = (room - 8) / columns;
  entities.push(letters([area.minX + 4, y], 'Contents', { height: 3.5, bold: true }));
  y -= 6;
  parts.contents.forEach(({ title, page: number }, i) => {
    const x = area.minX + 4 + Math.floor(i / perColumn) * columnWidth;
    const row = y - (i % perColumn) * 4.6;
    entities.push(letters([x, row], title));
    entities.push(letters([x + columnWidth - 8, row], String(number), { anchor: 'end' }));
  });
  y -= perColumn * 4.6 + 4;
  entities.push(letters([area.minX + 4, y], 'Before you build', { height: 3.5, bold: true }));
  y -= 6;
  for (const note of [...design.notes, ...CAUTIONS]) write(note);
  return {
    id: 'cover',
    title: 'cover',
    page,
    documentType: 'plan set',
    scale: undefined,
    entities,
    cautions: [],
  };
}

/** Said on every plan. */
const CAUTIONS: readonly string[] = [
  'Every figure comes from one model. Where a piece you made differs, fit the next piece to it, not to the list.',
  'Unplug the router before every cutter change. Wear eye, ear and dust protection. Clamp short pieces; never hold them by hand.',
];
