import { InputError } from '../../errors.js';

/**
 * How long a printer really prints 100 mm, as a share, measured on the scale page: along the short side of the paper and
 * along its long side. 1 is true.
 */
export interface PrintScale {
  readonly short: number;
  readonly long: number;
}

/** Farther off than this a printer is not distorting but fitting to the page. */
const MOST_OFF = 0.1;

/**
 * Reads factors measured on a print.
 *
 * @param text `0.994x1.002`: along the short side of the paper, then along the long side
 * @throws InputError for anything else, and for factors more than 10 % off
 */
export function parsePrintScale(text: string): PrintScale {
  const found = /^(\d+(?:\.\d+)?)\s*[x×]\s*(\d+(?:\.\d+)?)$/i.exec(text.trim());
  const [short, long] = [Number(found?.[1]), Number(found?.[2])];
  if (!found || [short, long].some((one) => !(Math.abs(one - 1) <= MOST_OFF))) {
    throw new InputError(
      'print-scale',
      `--print-scale is '${text}'; it must be two factors from 0.9 to 1.1, measured / 100 mm along the short and the long side of the paper: 0.994x1.002; a print that is farther off was fitted to the page: print at 100 %`,
    );
  }
  return { short, long };
}

/** `0.994 × 1.002` */
export const printScaleWords = ({ short, long }: PrintScale): string =>
  `${short.toFixed(4).replace(/0+$/, '').replace(/\.$/, '')} × ${long.toFixed(4).replace(/0+$/, '').replace(/\.$/, '')}`;
