import { sheetNames } from '../../tables/index.js';
import { COPLANAR, SAME_POINT } from '../../tolerances.js';
import type { Shop } from '../at-hand/index.js';
import { STOCK_PRACTICE } from '../practice/index.js';
import type { LayoutPart } from './layout-parts.js';
import { shortestPiece } from './saw-limits.js';

/** A length that is planed and ripped whole and crosscut last, because its pieces are too short for the machines. mm */
export interface MillingLength extends LayoutPart {
  /** In the order they are cut off; what is left at the end is held and not used. */
  readonly pieces: readonly LayoutPart[];
}

/** Parts with every short one gone into a milling length, and those lengths by themselves. */
export interface Gathered {
  readonly parts: readonly LayoutPart[];
  readonly lengths: readonly MillingLength[];
}

/**
 * Gathers solid parts that are shorter than the planer or the saw may be given: those of one wood and section share a length
 * that both machines take, with a grip left over for the last crosscut.
 *
 * @param prefix of the lengths' marks: `P` gives `P1`, `P2` …
 */
export function gathered(parts: readonly LayoutPart[], shop: Shop, prefix: string): Gathered {
  const least = leastLength(shop);
  const isShort = (part: LayoutPart) =>
    !sheetNames.includes(part.material) && part.length < least - SAME_POINT;
  const lengths = sections(parts.filter(isShort))
    .flatMap((section) => filled(section, shop))
    .map((pieces, i): MillingLength => {
      const { material, width, thickness, scrap } = pieces[0]!;
      return {
        mark: `${prefix}${i + 1}`,
        name: `length for ${pieces.map(({ mark }) => mark).join(', ')}`,
        material,
        width,
        thickness,
        scrap,
        length: lengthFor(pieces, shop),
        pieces,
      };
    });
  return { parts: [...parts.filter((part) => !isShort(part)), ...lengths], lengths };
}

const kerfOf = (shop: Shop): number => shop.sawKerf ?? STOCK_PRACTICE.kerf;

const leastLength = (shop: Shop): number => {
  const { saw, planer } = shortestPiece(shop);
  return Math.max(saw, planer);
};

/** Long enough for both machines, and at the last crosscut still long enough for the saw, with a grip to hold. */
function lengthFor(pieces: readonly LayoutPart[], shop: Shop): number {
  const last = pieces.at(-1)!.length + kerfOf(shop);
  const held = Math.max(STOCK_PRACTICE.grip, shortestPiece(shop).saw - last);
  return Math.max(leastLength(shop), used(pieces, shop) + held);
}

const used = (pieces: readonly LayoutPart[], shop: Shop): number =>
  pieces.reduce((sum, { length }) => sum + length + kerfOf(shop), 0);

function sections(parts: readonly LayoutPart[]): readonly (readonly LayoutPart[])[] {
  const found: LayoutPart[][] = [];
  for (const part of parts) {
    const same = found.find(([first]) => oneSection(first!, part));
    if (same) same.push(part);
    else found.push([part]);
  }
  return found;
}

const oneSection = (a: LayoutPart, b: LayoutPart): boolean =>
  a.material === b.material &&
  Math.abs(a.width - b.width) < COPLANAR &&
  Math.abs(a.thickness - b.thickness) < COPLANAR;

/** Longest first, each onto the first length that still takes it and stays handy. */
function filled(section: readonly LayoutPart[], shop: Shop): readonly (readonly LayoutPart[])[] {
  const lengths: LayoutPart[][] = [];
  const most = Math.max(STOCK_PRACTICE.stripLongest, leastLength(shop));
  for (const part of section.toSorted((a, b) => b.length - a.length)) {
    const on = lengths.find((pieces) => lengthFor([...pieces, part], shop) <= most + SAME_POINT);
    if (on) on.push(part);
    else lengths.push([part]);
  }
  return lengths;
}
