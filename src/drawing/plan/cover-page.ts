import type { Vec2 } from '../../frame/index.js';
import { type ShopPapers, strong } from '../../shop/index.js';
import type { Solids } from '../../solid/index.js';
import {
  type Draft,
  type DrawingUnits,
  drawableOf,
  drawnTable,
  fittedText,
  letters,
  type Paper,
  pageOf,
  type SheetEntity,
  SMALL,
  sizeWords,
  type Tag,
  tagged,
  type WrappedTable,
  wrappedTable,
  wrappedText,
} from '../sheet/index.js';
import { type View, viewBox, viewLines } from '../view/index.js';
import { jobWords } from './job-words.js';

/** What the cover tells. */
export interface CoverParts {
  readonly solids: Solids;
  readonly papers: ShopPapers;
  /** Isometric, as it is seen put together. */
  readonly picture: View;
  /** mm: width (x), depth (y), height (z). */
  readonly size: readonly [number, number, number];
  /** One sentence: what it makes. */
  readonly summary: string;
  readonly units: DrawingUnits;
  /** Sections with the pages they fill, and where they are taken. */
  readonly contents: readonly { readonly title: string; readonly pages: string; readonly place: string }[];
}

const LEADING = 4.4;

/** The first page: picture, size, what the job asks, which paper to take where, and the caution. */
export function coverPage(parts: CoverParts, paper: Paper): Draft {
  const page = pageOf(paper, 'portrait');
  const area = drawableOf(page);
  const { design } = parts.solids;
  const room = area.maxX - area.minX;
  // bold letters are wider than the plain ones a fit is reckoned with
  const title = fittedText(design.title, (room - 8) / 1.27, [10, 7, 5, 3.5]);
  const entities: SheetEntity[] = [
    letters([area.minX, area.maxY - 11], title.text, {
      height: title.height,
      bold: true,
      tag: { role: 'heading', level: 1 },
    }),
  ];
  const [width, depth, height] = parts.size.map((mm) => sizeWords(mm, parts.units));
  const head = wrappedText(`${parts.summary} ${width} wide, ${depth} deep, ${height} high.`, room, SMALL);
  const about: Tag = { role: 'paragraph' };
  head.forEach((row, i) => {
    entities.push(letters([area.minX, area.maxY - 18 - i * LEADING], row, { tag: about }));
  });
  const top = area.maxY - 18 - head.length * LEADING;

  // from the foot upwards: the cautions, the contents, the job; the picture takes what is left
  let y = area.minY;
  const below: SheetEntity[] = [];
  const notes = [...design.notes, ...CAUTIONS].flatMap((note) => {
    const tag: Tag = { role: 'paragraph' };
    return wrappedText(note, room, SMALL).map((row) => ({ row, tag }));
  });
  for (const { row, tag } of notes.toReversed()) {
    below.push(letters([area.minX, y], row, { tag }));
    y += LEADING;
  }
  const table = (head: string, { widths, rows }: WrappedTable) => {
    const tall = rows.reduce((sum, row) => sum + row.height, 0);
    y += tall + 1;
    below.push(drawnTable([area.minX, y], rows, widths));
    y += 2;
    below.push(
      letters([area.minX, y], head, { height: 3.5, bold: true, tag: { role: 'heading', level: 2 } }),
    );
    y += 8;
  };
  const contents = parts.contents.map(({ title, pages, place }) => [pages, title, place]);
  table(
    `Which paper to take where (this file is for ${paper})`,
    wrappedTable([['pages', 'what', 'take it'], ...contents], room),
  );
  // its first column is its head
  const job = jobWords(parts.papers, parts.units).map(([name, words]) => [strong(name), words]);
  const { widths, rows } = wrappedTable([['', ''], ...job], room);
  table('The job', { widths, rows: rows.slice(1) });

  const box = viewBox(parts.picture);
  const [low, high] = [y, top - 2];
  const factor = Math.min((room - 10) / (box.maxX - box.minX), (high - low) / (box.maxY - box.minY));
  const at: Vec2 = [
    (area.minX + area.maxX - factor * (box.minX + box.maxX)) / 2,
    (low + high - factor * (box.minY + box.maxY)) / 2,
  ];
  const said = `The ${design.title.toLowerCase()} put together, seen from the right and above.`;
  // read from the top down
  entities.push(
    ...tagged(viewLines(parts.picture, { at, factor }), { role: 'figure', said }),
    ...below.toReversed(),
  );
  return { id: 'cover', title: 'cover', page, entities };
}

/** Said on every plan. */
const CAUTIONS: readonly string[] = [
  'Every figure comes from one model. Where a piece you made differs, fit the next piece to it, not to the list.',
  'Unplug the router before every cutter change. Wear eye, ear and dust protection. Clamp short pieces; never hold them by hand.',
];
