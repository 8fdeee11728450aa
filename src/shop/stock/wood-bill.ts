import type { Blank } from '../../board/index.js';
import { sheetNames } from '../../tables/index.js';
import type { Verdict } from '../at-hand/index.js';
import { type WoodVolume, woodVolume } from '../boards/index.js';
import { STOCK_PRACTICE } from '../practice/index.js';
import type { CutRow } from './cut-list.js';
import type { MillingLength } from './milling-lengths.js';

/** What a share of the wood to buy is for. */
export interface BillItem extends WoodVolume {
  readonly what: string;
  readonly volumeMm3: number;
}

/** How much solid wood of one kind to buy; every item told, and the items add up to the total. */
export interface WoodBill {
  readonly material: string;
  readonly items: readonly BillItem[];
  readonly total: BillItem;
  /** Not verified when the shop file gives no rough allowance: the total is then short by it. */
  readonly verdict: Verdict;
}

/**
 * How much to buy, each allowance itemised.
 *
 * @param lengths that short pieces are milled in; what is held and left over of them is bought too
 * @param waste share of the rough volume bought beyond it
 */
export function woodBill(
  rows: readonly CutRow[],
  lengths: readonly MillingLength[] = [],
  waste: number = STOCK_PRACTICE.waste,
): readonly WoodBill[] {
  const solid = rows.filter((row) => !row.scrap && !sheetNames.includes(row.material));
  return [...new Set(solid.map((row) => row.material))].map((material) =>
    billOf(
      material,
      solid.filter((row) => row.material === material),
      lengths.filter((length) => length.material === material),
      waste,
    ),
  );
}

const KINDS = [
  ['board', 'boards, finished blanks'],
  ['tenon strip', 'tenon strips'],
] as const;

const ALLOWANCES = ['horn', 'length', 'width', 'thickness'] as const;

function billOf(
  material: string,
  rows: readonly CutRow[],
  lengths: readonly MillingLength[],
  waste: number,
): WoodBill {
  const sum = (of: (row: CutRow) => number) => rows.reduce((all, row) => all + of(row) * row.count, 0);
  const items = [
    ...KINDS.map(([kind, what]) =>
      item(
        what,
        sum((row) => (row.kind === kind ? row.blankVolume : 0)),
      ),
    ),
    ...ALLOWANCES.map((what) =>
      item(
        what === 'horn' ? 'horns' : `allowance on ${what}`,
        sum((row) =>
          (row.rough?.allowances ?? []).reduce(
            (all, one) => all + (one.what === what ? one.volumeMm3 : 0),
            0,
          ),
        ),
      ),
    ),
    item(
      'left over from lengths milled whole',
      lengths.reduce(
        (all, { pieces, ...whole }) => pieces.reduce((left, one) => left - sizeOf(one), all + sizeOf(whole)),
        0,
      ),
    ),
  ].filter(({ volumeMm3 }) => volumeMm3 > 0);
  const rough = items.reduce((all, one) => all + one.volumeMm3, 0);
  const whole = [...items, item(`waste, ${Math.round(waste * 100)} % of the rough volume`, rough * waste)];
  return {
    material,
    items: whole,
    total: item('to buy', rough * (1 + waste)),
    verdict: rows.every((row) => row.rough) ? 'passed' : 'not verified',
  };
}

const sizeOf = ({ length, width, thickness }: Blank): number => length * width * thickness;

const item = (what: string, volumeMm3: number): BillItem => ({
  what,
  volumeMm3,
  ...woodVolume(volumeMm3),
});
