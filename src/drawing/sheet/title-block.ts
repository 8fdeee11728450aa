import type { Vec2 } from '../../frame/index.js';
import { letters, path, SMALL, stroke } from './draw.js';
import type { DrawingUnits } from './drawing-units.js';
import type { Page } from './page.js';
import { type Projection, projectionSymbol } from './projection-symbol.js';
import type { Sheet, SheetEntity, Stroke } from './sheet.js';
import { fittedText } from './text-width.js';

/** A sheet before it is framed and numbered. */
export interface Draft {
  readonly id: string;
  readonly title: string;
  readonly page: Page;
  /** `board drawing`, `joint detail` … */
  readonly documentType: string;
  readonly scale: string | undefined;
  readonly material?: string;
  readonly entities: readonly SheetEntity[];
  readonly cautions: readonly string[];
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
  readonly creator?: string;
  readonly approved?: string;
  /** Written over every sheet: `FAILED CHECKS`. */
  readonly stamp?: string;
  /** Sheets before the first of these, and of the whole set, when there are others. */
  readonly before?: number;
  readonly total?: number;
}

/** Height of the block with its row of cautions, mm. */
export const BLOCK_HEIGHT = 25;

const ROW = 10;
const CAUTION_ROW = BLOCK_HEIGHT - 2 * ROW;

/** ISO 7200: the block is 180 mm wide. */
const WIDTH = 180;

const UNIT_WORDS: Readonly<Record<DrawingUnits, string>> = { mm: 'mm', in: 'inch', dual: 'mm [in]' };

/**
 * Frames and numbers sheets, and gives each its title block with the fields of ISO 7200; what is not known stays empty, to
 * be filled in by hand.
 */
export function finishSheets(drafts: readonly Draft[], set: SheetSet): readonly Sheet[] {
  return drafts.map((draft, i) => {
    const { minX, minY, maxX, maxY } = draft.page.live;
    const number = (set.before ?? 0) + i + 1;
    return {
      id: draft.id,
      title: `${set.design}: ${draft.title}`,
      width: draft.page.width,
      height: draft.page.height,
      scale: draft.scale,
      entities: [
        ...draft.entities,
        path(
          'frame',
          [
            [minX, minY],
            [maxX, minY],
            [maxX, maxY],
            [minX, maxY],
          ],
          true,
        ),
        ...block(draft, set, number, set.total ?? drafts.length),
        ...(set.stamp === undefined ? [] : [stampOver(draft.page, set.stamp)]),
      ],
    };
  });
}

/** The stamp, above the frame, where nothing else stands. */
export const stampOver = ({ live }: Page, stamp: string): Stroke =>
  letters([live.minX, live.maxY + 1.2], stamp, { height: 3.5, bold: true });

type Cell = readonly [width: number, caption: string, value: string];

function block(draft: Draft, set: SheetSet, number: number, total: number): readonly Stroke[] {
  const { live } = draft.page;
  const stretch = Math.max(1, Math.min(live.maxX - live.minX, 190) / WIDTH);
  const left = live.maxX - WIDTH * stretch;
  const upper: readonly Cell[] = [
    [54, 'title', draft.title],
    [46, 'of', set.design],
    [32, 'material', draft.material ?? ''],
    [14, 'scale', draft.scale ?? ''],
    [16, 'unit', UNIT_WORDS[set.units]],
    [18, '', ''],
  ];
  const lower: readonly Cell[] = [
    [24, 'owner', set.owner ?? ''],
    [30, 'document', draft.documentType],
    [27, 'number', `${set.number}-${number}`],
    [20, 'date', set.date ?? ''],
    [22, 'made by', set.creator ?? 'tenonwright'],
    [20, 'approved', set.approved ?? ''],
    // eight digits of a hash
    [21, 'rev.', set.revision],
    [16, 'sheet', `${number}/${total}`],
  ];
  const top = live.minY + BLOCK_HEIGHT;
  const symbolAt: Vec2 = [live.maxX - 9 * stretch, live.minY + 1.5 * ROW];
  return [
    path('visible', [
      [left, live.minY],
      [left, top],
      [live.maxX, top],
    ]),
    stroke('table', [left, top - CAUTION_ROW], [live.maxX, top - CAUTION_ROW]),
    stroke('table', [left, live.minY + ROW], [live.maxX, live.minY + ROW]),
    ...cells(upper, left, live.minY + ROW, stretch),
    ...cells(lower, left, live.minY, stretch),
    ...projectionSymbol(set.projection, symbolAt),
    ...caution(draft.cautions, left, live.maxX, top),
  ];
}

function cells(row: readonly Cell[], left: number, bottom: number, stretch: number): readonly Stroke[] {
  let x = left;
  return row.flatMap(([width, caption, value], i) => {
    const start = x;
    x += width * stretch;
    const fitted = fittedText(value, width * stretch - 2, [3.5, SMALL]);
    return [
      ...(i === 0 ? [] : [stroke('table', [start, bottom], [start, bottom + ROW])]),
      ...(caption === '' ? [] : [letters([start + 1, bottom + 6.3], caption)]),
      ...(value === '' ? [] : [letters([start + 1, bottom + 1.5], fitted.text, { height: fitted.height })]),
    ];
  });
}

function caution(cautions: readonly string[], left: number, right: number, top: number): readonly Stroke[] {
  if (cautions.length === 0) return [];
  const { text } = fittedText(cautions.join(' '), right - left - 2, [SMALL]);
  return [letters([left + 1, top - CAUTION_ROW + 1.3], text)];
}
