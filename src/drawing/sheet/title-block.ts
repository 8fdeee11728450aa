import { systemOf } from '../../length/index.js';
import { letters, path, SMALL, stroke } from './draw.js';
import type { DrawingUnits } from './drawing-units.js';
import { BLOCK_HEIGHT, type Page, type Paper, pageOf } from './page.js';
import { type Projection, projectionSymbol } from './projection-symbol.js';
import { withBody } from './shared-body.js';
import type { Sheet, SheetEntity, Stroke } from './sheet.js';
import { boxLoop, fittedText } from './text-width.js';

/** A sheet before it is framed and numbered. */
export interface Draft {
  readonly id: string;
  readonly title: string;
  readonly page: Page;
  readonly entities: readonly SheetEntity[];
}

/** What all sheets of a set have in common. */
export interface SheetSet {
  /** Title of the design. */
  readonly design: string;
  /** Of the set, at most 16 letters; each sheet adds its own number. */
  readonly number: string;
  readonly revision: string;
  readonly units: DrawingUnits;
  readonly projection: Projection;
  readonly owner?: string;
  readonly date?: string;
  /** Written over every sheet: `FAILED CHECKS`. */
  readonly stamp?: string;
  /** Sheets before the first of these, and of the whole set, when there are others. */
  readonly before?: number;
  readonly total?: number;
}

const UNIT_WORDS = { mm: 'mm', in: 'inch', dual: 'mm [in]' };

/**
 * Frames and numbers sheets: at the foot of each stand its title, the design, units, projection, revision and number.
 *
 * @param paper on which upright drafts are set down, when it is another than they were laid out on: all papers have the same live area
 */
export function finishSheets(drafts: readonly Draft[], set: SheetSet, paper?: Paper): readonly Sheet[] {
  return drafts.map((draft, i) => {
    const number = (set.before ?? 0) + i + 1;
    const page = paper === undefined ? draft.page : pageOf(paper, 'portrait');
    const own = [
      path('frame', boxLoop(page.live), true),
      ...foot({ ...draft, page }, set, number, set.total ?? drafts.length),
      ...(set.stamp === undefined ? [] : [stampOver(page, set.stamp)]),
    ];
    return Object.assign(withBody(draft.entities, draft.page, page, own), {
      id: draft.id,
      title: `${set.design}: ${draft.title}`,
      width: page.width,
      height: page.height,
      scale: undefined,
    });
  });
}

/** The stamp, above the frame, where nothing else stands. */
export const stampOver = ({ live }: Page, stamp: string): Stroke =>
  letters([live.minX, live.maxY + 1.2], stamp, { height: 3.5, bold: true });

function foot({ page, title }: Draft, set: SheetSet, number: number, total: number): readonly Stroke[] {
  const { minX, maxX, minY } = page.live;
  const top = minY + BLOCK_HEIGHT;
  const known = [set.owner, set.date, `rev. ${set.revision}`].filter((one) => one !== undefined);
  // share of the width, words
  const cells: readonly (readonly [number, string])[] = [
    [0.36, title],
    [0.24, set.design],
    [0.09, UNIT_WORDS[systemOf(set.units)]],
    [0.2, known.join(' · ')],
    [0.11, `${number}/${total}`],
  ];
  const room = maxX - minX - 16;
  let x = minX;
  const drawn = cells.flatMap(([share, words], i): readonly Stroke[] => {
    const start = x;
    x += share * room;
    const { text, height } = fittedText(words, share * room - 3, [3.5, SMALL]);
    return [
      ...(i === 0 ? [] : [stroke('table', [start, minY], [start, top])]),
      letters([start + 1.5, minY + (BLOCK_HEIGHT - height) / 2], text, { height }),
    ];
  });
  return [
    stroke('visible', [minX, top], [maxX, top]),
    ...drawn,
    stroke('table', [x, minY], [x, top]),
    ...projectionSymbol(set.projection, [maxX - 8, minY + BLOCK_HEIGHT / 2]),
  ];
}
