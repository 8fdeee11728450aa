import { movedEntities } from '../sheet/index.js';
import { type DrawnFigure, type FlowBlock, told } from './drawn-figure.js';
import { heightOf, stacked } from './flow.js';
import { BELOW } from './set-text.js';

const GAP = 4;

/**
 * A drawing on the right and the lists of a text on the left of it, as many of their items as are as high; what is left follows below.
 *
 * @param room width, mm
 */
export function besideText(
  blocks: readonly FlowBlock[],
  figure: DrawnFigure,
  room: number,
): readonly FlowBlock[] {
  const width = room - figure.width - GAP;
  const left: FlowBlock[] = [];
  const below: FlowBlock[] = [];
  for (const block of blocks) {
    const isFull = below.length > 0;
    if (isFull) below.push(block);
    else if (block.kind !== 'list' && block.kind !== 'cautions') left.push(block);
    else {
      const { items } = block;
      const over = (count: number) => heightOf([...left, some(block, 0, count)], width) - figure.height;
      let [count, reached] = [0, over(0)];
      while (count < items.length) {
        const more = over(count + 1);
        if (more >= Math.abs(reached)) break;
        [count, reached] = [count + 1, more];
      }
      left.push(some(block, 0, count));
      if (count < items.length) below.push(some(block, count));
    }
  }
  const text = stacked(left, width);
  const height = Math.max(text.height - BELOW, figure.height);
  return [
    {
      kind: 'drawn',
      said: figure.said,
      width: room,
      height,
      draw: ([x, y]) => [
        ...movedEntities(text.entities, [x, y + height]),
        ...told(figure, [x + room - figure.width, y + height - figure.height]),
      ],
    },
    ...below,
  ];
}

const some = (
  block: Extract<FlowBlock, { kind: 'list' | 'cautions' }>,
  from: number,
  to?: number,
): FlowBlock =>
  block.kind === 'list'
    ? { ...block, items: block.items.slice(from, to) }
    : { ...block, items: block.items.slice(from, to) };
