import type { Units } from '../length/index.js';
import type { Kind } from '../model/index.js';

/** A bare figure gets the unit it was meant in, so that it stays what it is when the units change. */
export function withUnit(text: string, kind: Kind, units: Units): string {
  if (!/^[+-]?[\d\s./½¼¾⅛⅜⅝⅞-]+$/.test(text)) return text;
  if (kind === 'length') return `${text} ${units}`;
  return kind === 'mass' ? `${text} ${units === 'mm' ? 'kg' : 'lb'}` : text;
}
