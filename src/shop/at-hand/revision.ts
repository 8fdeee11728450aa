import type { ParameterValue } from '../../model/index.js';
import type { Shop } from './shop.js';

/** FNV-1a, 32 bits: offset basis and prime as published by its authors (Fowler, Noll, Vo). */
const OFFSET_BASIS = 0x811c9dc5;
const PRIME = 0x01000193;

/**
 * The revision every sheet of a design carries: eight hexadecimal digits that change when a parameter, the program, the file
 * of a piece or what is at hand in the shop does: another router moves every stop on the cards.
 *
 * @param parameters of the run, mm and degrees; their order does not matter
 * @param version of this program
 * @param shop its figures; what it is called does not matter
 * @param told what a piece's file says, when it is told in one
 */
export function revisionOf(
  parameters: Readonly<Record<string, ParameterValue>>,
  version: string,
  { name: _, ...figures }: Shop,
  told?: string,
): string {
  const lines = Object.entries(parameters)
    .map(([name, { value, unit }]) => `${name}=${JSON.stringify(value)}${unit}`)
    .toSorted();
  return fnv1a([version, ...lines, JSON.stringify(figures), ...(told === undefined ? [] : [told])].join('\n'))
    .toString(16)
    .padStart(8, '0');
}

/** The hash of a text's UTF-8 bytes, 0 to 2³² − 1. */
export function fnv1a(text: string): number {
  let hash = OFFSET_BASIS;
  for (const byte of new TextEncoder().encode(text)) hash = Math.imul(hash ^ byte, PRIME) >>> 0;
  return hash;
}
