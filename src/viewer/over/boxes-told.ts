import type { Point, PreviewBox, PreviewData } from '../told/index.js';
import { type Choices, offsetOf } from './choices.js';

/** A box whose sides are dimensioned, and how far it stands from where it stands put together. */
export interface BoxTold {
  readonly box: PreviewBox;
  readonly offset: Point;
}

/**
 * What is dimensioned: the one piece that is chosen; or the whole; or, when its boards stand apart and the whole has no size,
 * one board of each size, where it stands.
 */
export function boxesTold(data: PreviewData, choices: Choices): readonly BoxTold[] {
  const { chosen, sizes, apart, step, hidden } = choices;
  const told = (box: PreviewBox, id: string): BoxTold => ({ box, offset: offsetOf(data, choices, id) });
  const one = chosen.size === 1 ? data.pieces.find(({ id }) => chosen.has(id)) : undefined;
  if (one?.box) return [told(one.box, one.id)];
  if (!sizes) return [];
  if (apart === 0 && step === undefined) return [{ box: data.box, offset: [0, 0, 0] }];
  const kinds = new Map<string, BoxTold>();
  for (const { id, role, box } of data.pieces) {
    if (role !== 'board' || !box || hidden.has(id)) continue;
    const kind = box.sides.map(({ mmText }) => mmText).join();
    if (!kinds.has(kind)) kinds.set(kind, told(box, id));
  }
  return [...kinds.values()];
}
