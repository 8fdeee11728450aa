/** What a bare number means, and what lengths are printed in. */
export type Units = 'mm' | 'in';

/** The international inch, exact since 1959; mm. */
export const INCH = 25.4;

/** A unit a length may be written in: what it is called, and how many mm, as a ratio so that 14.5 in is 368.3 mm to the last bit. */
interface WrittenUnit {
  readonly is: 'mm' | 'cm' | 'm' | 'in' | 'ft';
  readonly times: number;
  readonly over: number;
}

const MM: WrittenUnit = { is: 'mm', times: 1, over: 1 };
const CM: WrittenUnit = { is: 'cm', times: 10, over: 1 };
const M: WrittenUnit = { is: 'm', times: 1000, over: 1 };
const IN: WrittenUnit = { is: 'in', times: 254, over: 10 };
const FT: WrittenUnit = { is: 'ft', times: 3048, over: 10 };

const WRITTEN: ReadonlyMap<string, WrittenUnit> = new Map([
  ['mm', MM],
  ['cm', CM],
  ['m', M],
  ['in', IN],
  ['inch', IN],
  ['inches', IN],
  ['"', IN],
  ['ft', FT],
  ['foot', FT],
  ['feet', FT],
  ["'", FT],
]);

/** The unit a word or mark stands for; undefined for any other word. */
export const unitNamed = (word: string): WrittenUnit['is'] | undefined => WRITTEN.get(word.toLowerCase())?.is;

/** @returns mm */
export function toMm(value: number, unit: WrittenUnit['is']): number {
  const { times, over } = WRITTEN.get(unit)!;
  return (value * times) / over;
}
