import { STOCK_PRACTICE } from '../practice/index.js';
import type { SheetAtHand } from './shop.js';

/** The sheets at hand that are meant by a material and a thickness: those that measure nearest to it, where any is near enough. mm */
export const sheetsFor = (
  sheets: readonly SheetAtHand[],
  material: string,
  thickness: number,
): readonly SheetAtHand[] => {
  const off = (sheet: SheetAtHand) => Math.abs(sheet.thickness - thickness);
  const near = sheets.filter(
    (sheet) => sheet.name === material && off(sheet) < STOCK_PRACTICE.sheetThickness,
  );
  const nearest = Math.min(...near.map(off));
  return near.filter((sheet) => off(sheet) === nearest);
};
