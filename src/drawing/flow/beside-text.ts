import { movedEntities } from '../sheet/index.js';
import { type DrawnFigure, type FlowBlock, told } from './drawn-figure.js';
import { flow, heightOf } from './flow.js';
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
  const tall = (blocksThere: readonly FlowBlock[]) => heightOf(blocksThere, width);
  const left: FlowBlock[] = [];
  const below: FlowBlock[] = [];
  for (const block of blocks) {
    const isFull = below.length > 0;
    if (isFull) below.push(block);
    else if (block.kind !== 'list' && block.kind !== 'cautions') left.push(block);
    else {
      const { items } = block;
      let count = 0;
      const over = (more: number) => tall([...left, some(block, 0, more)]) - figure.height;
      while (count < items.length && over(count + 1) < Math.abs(over(count))) count += 1;
      left.push(some(block, 0, count));
      if (count < items.length) below.push(some(block, count));
    }
  }
  const text = tall(left) - BELOW;
  const height = Math.max(text, figure.height);
  const [page = []] = flow(left, { minX: 0, maxX: width, minY: -1e6, maxY: 0 }).pages;
  return [
    {
      kind: 'drawn',
      said: figure.said,
      width: room,
      height,
      draw: ([x, y]) => [
        ...movedEntities(page, [x, y + height]),
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
