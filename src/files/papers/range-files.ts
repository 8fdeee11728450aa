import { rangeBars, rangeMap, type Sheet } from '../../drawing/index.js';
import type { Say } from '../../length/index.js';
import { type Ranges, rangePaper } from '../../range/index.js';
import type { OutputFile } from '../folder/index.js';
import { json } from '../summary/index.js';
import { sheetSvg } from '../svg/index.js';
import { markdown } from './markdown.js';

/** White round a picture, mm. */
const MARGIN = 6;

/**
 * The ranges of a design as files: figures, paper, pictures.
 *
 * @param about tells the design and everything else the verdicts depend on, so that a plan takes only its own ranges
 */
export function rangeFiles(ranges: Ranges, about: string, title: string, say: Say): readonly OutputFile[] {
  const { alone, map, together } = rangePaper(ranges, say);
  const file = (path: string, text: string): OutputFile => ({ path, bytes: new TextEncoder().encode(text) });
  const picture = (id: string, of: ReturnType<typeof rangeBars>): OutputFile => {
    const sheet: Sheet = {
      id,
      title,
      width: of.width + 2 * MARGIN,
      height: of.height + 2 * MARGIN,
      scale: undefined,
      entities: of.draw([MARGIN, MARGIN]),
    };
    return file(`${id}.svg`, sheetSvg(sheet));
  };
  return [
    file('ranges.json', json({ about, ...ranges })),
    file('ranges.md', markdown([...alone, ...map, ...together])),
    ...(ranges.alone.length > 0 ? [picture('ranges', rangeBars(ranges.alone, say))] : []),
    ...(ranges.map ? [picture('map', rangeMap(ranges.map, say))] : []),
  ];
}
