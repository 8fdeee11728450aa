import { rulesOf, speaker } from '../../length/index.js';
import { type Ranges, rangePaper } from '../../range/index.js';
import { rangeBars, rangeMap } from '../figure/index.js';
import type { FlowBlock } from '../flow/index.js';
import type { DrawingUnits } from '../sheet/index.js';

/** The paper of the ranges with its pictures in their places. */
export function rangeBlocks(ranges: Ranges, units: DrawingUnits): readonly FlowBlock[] {
  const say = speaker(rulesOf(units)[0]!);
  const { alone, map, together } = rangePaper(ranges, say);
  const [title, about, ...tables] = alone as readonly FlowBlock[];
  return [
    title!,
    about!,
    rangeBars(ranges.alone, say),
    ...tables,
    ...(map as readonly FlowBlock[]),
    ...(ranges.map ? [rangeMap(ranges.map, say)] : []),
    ...(together as readonly FlowBlock[]),
  ];
}
