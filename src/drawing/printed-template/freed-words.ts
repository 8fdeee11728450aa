import { settledLength, type Vec2 } from '../../frame/index.js';
import {
  type ArcStroke,
  type Box,
  bestPlace,
  boxInside,
  clearOfLines,
  path,
  roomOf,
  type Stroke,
  type TextStroke,
  textBox,
} from '../sheet/index.js';
import type { KeyDimension } from './template-keys.js';

/** How far a label may move to stand free, mm. */
const STRAY: readonly number[] = [0, 2, 4, 6, 9, 12, 16];

/** Of one that would else stand on a line, mm. */
const FAR: readonly number[] = [...STRAY, 20, 25, 31];

/** Words moved a little where they would stand on other words or on lines. */
export function freed(strokes: readonly Stroke[], keys: readonly KeyDimension[]): readonly Stroke[] {
  const texts = strokes.filter((one) => one.kind === 'text');
  // the figure of a key dimension may stand anywhere along it
  const taken = keys.map(({ axis, from, to }) =>
    axis === 'x'
      ? { minX: from[0], maxX: to[0], minY: from[1] - 5, maxY: from[1] }
      : { minX: from[0] - 5, maxX: from[0], minY: from[1], maxY: to[1] },
  );
  const room = roomOf(strokes.filter((one) => one.kind !== 'text'));
  for (const box of taken) room.claim(box);
  const placed = new Map<Stroke, Stroke>();
  for (const text of texts) {
    const best = bestPlace(room, placesFor(text, STRAY), textBox) ?? text;
    room.claim(textBox(best));
    placed.set(text, best);
  }
  return strokes.map((one) => placed.get(one) ?? one);
}

/**
 * The words of a printed sheet, clear of all its lines and of each other; what finds no empty place stands on blank paper, but hides
 * no line to cut.
 *
 * @param taken where words stand already
 * @param kept what of the sheet is left when its seams are cut
 */
export function freedOnSheet(
  lines: readonly Stroke[],
  words: readonly TextStroke[],
  taken: readonly Box[],
  kept: Box,
): readonly Stroke[] {
  const straight = lines.map((one) =>
    one.kind === 'arc'
      ? chorded(one)
      : one.kind === 'circle'
        ? chorded({ ...one, startDeg: 0, sweepDeg: 360 })
        : one,
  );
  const room = roomOf(straight);
  const cuts = roomOf(
    straight.filter((one) => one.kind !== 'tone' && one.kind !== 'text' && one.line === 'template'),
  );
  for (const box of taken) room.claim(box);
  return words.flatMap((text) => {
    const staying = boxInside(textBox(text), kept);
    const places = placesFor(text, FAR).filter((one) => !staying || boxInside(textBox(one), kept));
    const best = bestPlace(room, places, textBox, (one) => 50 * cuts.crossed(within(textBox(one)))) ?? text;
    room.claim(textBox(best));
    return cuts.crossed(within(textBox(best))) > 0 ? [best] : clearOfLines(room, best);
  });
}

/** A box less the air that is kept round it, so that only what runs through it counts. */
const within = ({ minX, minY, maxX, maxY }: Box): Box => ({
  minX: minX + 0.4,
  minY: minY + 0.4,
  maxX: maxX - 0.4,
  maxY: maxY - 0.4,
});

/** An arc or a circle in short straight pieces. */
function chorded({ centre: [x, y], radius, startDeg, sweepDeg, line }: Omit<ArcStroke, 'kind'>): Stroke {
  const points = Array.from({ length: 65 }, (_, i): Vec2 => {
    const turn = ((startDeg + (sweepDeg * i) / 64) * Math.PI) / 180;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  });
  return path(line, points);
}

const placesFor = (text: TextStroke, reaches: readonly number[]): readonly TextStroke[] =>
  reaches.flatMap((reach) =>
    Array.from({ length: reach === 0 ? 1 : 12 }, (_, i): TextStroke => {
      const turn = (i * Math.PI) / 6;
      return {
        ...text,
        at: [
          settledLength(text.at[0] + reach * Math.cos(turn)),
          settledLength(text.at[1] + reach * Math.sin(turn)),
        ],
      };
    }),
  );
