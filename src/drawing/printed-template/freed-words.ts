import { bestPlace, roomOf, type Stroke, type TextStroke, textBox } from '../sheet/index.js';
import type { KeyDimension } from './template-keys.js';

/** How far a label may move to stand free, mm. */
const STRAY: readonly number[] = [0, 2, 4, 6, 9, 12, 16];

/** Words moved a little where they would stand on other words or on lines. */
export function freed(strokes: readonly Stroke[], keys: readonly KeyDimension[]): readonly Stroke[] {
  const texts = strokes.filter((one) => one.kind === 'text');
  const room = roomOf(strokes.filter((one) => one.kind !== 'text'));
  // the figure of a key dimension may stand anywhere along it
  for (const { axis, from, to } of keys)
    room.claim(
      axis === 'x'
        ? { minX: from[0], maxX: to[0], minY: from[1] - 5, maxY: from[1] }
        : { minX: from[0] - 5, maxX: from[0], minY: from[1], maxY: to[1] },
    );
  const placed = new Map<Stroke, Stroke>();
  for (const text of texts) {
    const places = STRAY.flatMap((reach) =>
      Array.from({ length: reach === 0 ? 1 : 12 }, (_, i): TextStroke => {
        const turn = (i * Math.PI) / 6;
        return {
          ...text,
          at: [text.at[0] + reach * Math.cos(turn), text.at[1] + reach * Math.sin(turn)],
        };
      }),
    );
    const best = bestPlace(room, places, textBox) ?? text;
    room.claim(textBox(best));
    placed.set(text, best);
  }
  return strokes.map((one) => placed.get(one) ?? one);
}
