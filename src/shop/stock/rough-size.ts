import type { Blank } from '../../board/index.js';
import { INCH } from '../../length/index.js';
import { sheetNames } from '../../tables/index.js';
import { SAME_LENGTH } from '../../tolerances.js';
import type { Shop } from '../at-hand/index.js';

/** One thing added to a finished size, and the wood it takes; lengths mm, per piece. */
export interface Allowance {
  readonly what: 'horn' | 'length' | 'width' | 'thickness';
  readonly amount: number;
  readonly volumeMm3: number;
}

/** The size a piece is sawn to before it is milled. */
export interface RoughSize {
  readonly size: Blank;
  /** In the order they are added: their volumes and the finished blank's make up the rough one exactly. */
  readonly allowances: readonly Allowance[];
}

/** What is added; a test blank or a strip has no ends to square. */
export interface RoughOptions {
  /** Left on beyond the ends until a mortise near them is cut, both together. */
  readonly horn?: number;
  readonly endsToSquare?: boolean;
}

/**
 * Rough size of a piece.
 *
 * Sheet goods are cut to size from the sheet and get no allowance.
 *
 * @returns undefined when the shop file gives no allowance for solid wood
 */
export function roughSize(
  finished: Blank,
  material: string,
  shop: Shop,
  options: RoughOptions = {},
): RoughSize | undefined {
  if (sheetNames.includes(material)) return { size: finished, allowances: [] };
  const given = shop.roughAllowance;
  if (given === undefined) return undefined;
  const { length, width, thickness } = finished;
  const horn = options.horn ?? 0;
  const squared = options.endsToSquare === false ? 0 : given.length;
  const long = sawn(length + horn + squared, shop);
  const wide = sawn(width + given.width, shop);
  const thick = thickness + given.thickness;
  const [ends, sides] = [long - length - horn, wide - width];
  const allowances: readonly Allowance[] = [
    { what: 'horn', amount: horn, volumeMm3: horn * width * thickness },
    { what: 'length', amount: ends, volumeMm3: ends * width * thickness },
    { what: 'width', amount: sides, volumeMm3: long * sides * thickness },
    { what: 'thickness', amount: given.thickness, volumeMm3: long * wide * given.thickness },
  ];
  return {
    size: { length: long, width: wide, thickness: thick },
    allowances: allowances.filter(({ amount }) => amount !== 0),
  };
}

/** What is sawn before it is milled is sawn to an eighth of an inch, never under; mm are sawn as they come out. */
const sawn = (size: number, { measures }: Shop): number =>
  measures === 'in' ? Math.ceil((size * 8) / INCH - SAME_LENGTH) * (INCH / 8) : size;
