import type { Say } from '../length/index.js';
import { printValue } from '../model/index.js';
import { type Block, heading, list, paragraph, table } from '../shop/index.js';
import type { Alone, Beyond } from './alone.js';
import type { Dimension } from './dimension.js';
import type { Ranges } from './ranges.js';
import type { Box } from './together.js';

/** A value of a dimension in the person's words. */
export const valueWords = ({ kind }: Dimension, value: number, { units }: Say): string =>
  printValue({ kind }, value, units);

/** The paper "Dimensions you may change, and how far", in parts that a plan puts its pictures between. */
export interface RangePaper {
  readonly alone: readonly Block[];
  readonly map: readonly Block[];
  readonly together: readonly Block[];
}

/** For which dimensions a design stays sound, told with what was tried and nothing beyond it. */
export const rangePaper = (ranges: Ranges, say: Say): RangePaper => ({
  alone: aloneBlocks(ranges, say),
  map: mapBlocks(ranges, say),
  together: ranges.together ? togetherBlocks(ranges.together, say) : [],
});

function aloneBlocks({ alone, tried }: Ranges, say: Say): readonly Block[] {
  const ends = alone.flatMap((one) => endWords(one, say));
  const again = alone.flatMap(({ dimension, again }) =>
    again.map(
      ({ from, to }) =>
        `${dimension.label}: sound again ${from === to ? 'at' : `from ${valueWords(dimension, from, say)} to`} ${valueWords(dimension, to, say)}, behind values that are not`,
    ),
  );
  return [
    heading('Dimensions you may change, and how far', 1),
    paragraph(
      `One dimension at a time was changed, while the others stayed as planned or followed it as they do by themselves. ${tried} designs were worked out and put through every check: whether it fits together, can be cut and glued up, stands, and bears what it is for. From the smaller size to the larger one, every design that was tried passed, some with a warning; the next size beyond was tried as well and failed, for the reason below. Nothing is claimed of sizes that were not tried: the widest step tells how far apart they lie. When you change two dimensions at once, or take a size of your own, have the program check it before you cut.`,
    ),
    table(
      ['dimension', 'as planned', 'from', 'to', 'widest step'],
      alone.map(({ dimension, span, looked }) => [
        dimension.label,
        valueWords(dimension, dimension.value, say),
        valueWords(dimension, span.from, say),
        valueWords(dimension, span.to, say),
        valueWords(dimension, looked, say),
      ]),
    ),
    ...(ends.length > 0 ? [heading('What goes wrong beyond'), list(ends)] : []),
    ...(again.length > 0 ? [list(again)] : []),
  ];
}

const endWords = ({ dimension, below, above }: Alone, say: Say): readonly string[] =>
  [below, above].flatMap((beyond) => (beyond ? [oneEnd(dimension, beyond, say)] : []));

const oneEnd = (dimension: Dimension, { value, text, cure }: Beyond, say: Say): string =>
  `${dimension.label} ${valueWords(dimension, value, say)}: ${text}${cureWords(cure)}`;

const cureWords = (cure: string | undefined): string =>
  cure === undefined
    ? ''
    : cure === ''
      ? '; no other dimension by itself was found that lets it be so'
      : `; tried: with ${cure} it is sound`;

function mapBlocks({ map }: Ranges, say: Say): readonly Block[] {
  if (!map) return [];
  const cells = map.cells.flat();
  const tried = cells.filter(({ tried }) => tried);
  const sound = tried.filter(({ answer }) => answer.sound).length;
  const reasons = new Map<string, string>();
  for (const { answer } of cells)
    if (!answer.sound && !reasons.has(answer.code)) reasons.set(answer.code, answer.text);
  const [across, up] = [map.across.label, map.up.label];
  return [
    heading(`${across} and ${up} together`),
    paragraph(
      `Of ${cells.length} places on the map ${tried.length} were judged in full, and ${sound} of those are sound. The ${cells.length - tried.length} others, drawn smaller, lie between tried ones that agree. ${map.borders.length} places of the border were found to ${valueWords(map.across, map.across.step, say)} and ${valueWords(map.up, map.up.step, say)}.`,
    ),
    ...(reasons.size > 0 ? [list([...reasons.values()])] : []),
  ];
}

const togetherBlocks = ({ limits, tried }: Box, say: Say): readonly Block[] => [
  heading('All of them at once'),
  paragraph(
    `Within these limits ${tried} designs were drawn at random, every dimension moved at once, and judged in full: none had an error. That is what was tried, and no more is claimed.`,
  ),
  table(
    ['dimension', 'from', 'to'],
    limits.map(({ dimension, from, to }) => [
      dimension.label,
      valueWords(dimension, from, say),
      valueWords(dimension, to, say),
    ]),
  ),
];
