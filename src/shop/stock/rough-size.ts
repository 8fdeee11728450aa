import type { Blank } from '../../board/index.js';
import { sheetNames } from '../../tables/index.js';
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
  const ends = options.endsToSquare === false ? 0 : given.length;
  const long = length + horn + ends;
  const wide = width + given.width;
  const allowances: readonly Allowance[] = [
    { what: 'horn', amount: horn, volumeMm3: horn * width * thickness },
    { what: 'length', amount: ends, volumeMm3: ends * width * thickness },
    { what: 'width', amount: given.width, volumeMm3: long * given.width * thickness },
    { what: 'thickness', amount: given.thickness, volumeMm3: long * wide * given.thickness },
  ];
  return {
    size: { length: long, width: wide, thickness: thickness + given.thickness },
    allowances: allowances.filter(({ amount }) => amount !== 0),
  };
}
