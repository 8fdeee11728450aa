import type { Vec2 } from '../../frame/index.js';
import { arrowHead, letters, SMALL, stroke } from './draw.js';
import { bestPlace, type Room } from './room.js';
import type { Stroke, TextStroke } from './sheet.js';
import { type Box, boxInside, boxLoop, textBox, textWidth } from './text-width.js';

/** Directions in which a place is looked for, far apart one after the other, and how far, mm. */
const TURNS = 16;
const WAYS: readonly Vec2[] = Array.from({ length: TURNS }, (_, i) => {
  const turn = (((i * 5) % TURNS) * 2 * Math.PI) / TURNS + Math.PI / 4;
  return [Math.cos(turn), Math.sin(turn)];
});
const REACHES: readonly number[] = [0, 2, 4, 7, 10, 14, 19, 25, 32, 40];

/** A label nearer than this needs no line to what it names, mm. */
const NEAR = 3;

/** Lines through a label's place that are no worse than words its leader would strike through. */
const STRUCK = 8;

/** Words where they may stand, how far from what they name, and the box they take. */
interface Place {
  readonly reach: number;
  readonly words: TextStroke;
  readonly box: Box;
}

/**
 * Words beside a point, where no other words stand and few lines run; with a leader when they are not right beside it.
 *
 * @param clear how far the words must keep off the point, mm
 * @param options `leader`: always, or only from afar; `within`: words stay in this box
 * @returns the strokes, their place claimed
 */
export function labelAt(
  room: Room,
  point: Vec2,
  text: string,
  clear: number,
  options: { readonly leader: 'always' | 'from afar'; readonly within?: Box; readonly bold?: boolean },
): readonly Stroke[] {
  const half = textWidth(text, SMALL, options.bold) / 2;
  const bold = options.bold === undefined ? {} : { bold: options.bold };
  let last: Place | undefined;
  function* places(): Generator<Place> {
    for (const reach of REACHES)
      for (const [c, s] of WAYS) {
        // the middle of the words stands so that their box keeps clear of the point
        const [x, y] = [point[0] + c * (clear + reach + half), point[1] + s * (clear + reach + SMALL / 2)];
        const words = letters([x, y - SMALL / 2], text, { anchor: 'middle', ...bold });
        const box = textBox(words);
        // words aslant of the point may still lie over it
        if (boxInside(boxOn(point), box)) continue;
        if (options.within && !boxInside(box, options.within)) continue;
        last = { reach, words, box };
        yield last;
      }
  }
  const isLed = (reach: number) => options.leader === 'always' || reach > NEAR;
  const struck = ({ reach, box }: Place) =>
    isLed(reach) ? STRUCK * room.struck(point, nearestOn(box, point)) : 0;
  const best = bestPlace(room, places(), ({ box }) => box, struck) ?? last;
  if (!best) return [];
  const { box } = best;
  const words = clearOfLines(room, best.words);
  room.claim(box);
  if (!isLed(best.reach)) return words;
  const foot = nearestOn(box, point);
  room.avoid([point, foot]);
  // a head longer than its line would reach back into the words
  const size = Math.min(1.6, Math.hypot(point[0] - foot[0], point[1] - foot[1]));
  return [...words, stroke('dimension', foot, point), arrowHead(point, foot, size)];
}

const boxOn = ([x, y]: Vec2): Box => ({ minX: x, maxX: x, minY: y, maxY: y });

/** Words, on a piece of blank paper where lines run through their place. */
export function clearOfLines(room: Room, words: TextStroke): readonly Stroke[] {
  const box = textBox(words);
  if (room.crossed(box) === 0) return [words];
  return [
    { kind: 'tone', part: '', colour: '#ffffff', loops: [boxLoop(box)], marks: [], ink: '#ffffff' },
    words,
  ];
}

/** Where a leader leaves the words: the middle of the side that looks at the point. */
function nearestOn({ minX, minY, maxX, maxY }: Box, [x, y]: Vec2): Vec2 {
  if (x < minX) return [minX - 0.3, (minY + maxY) / 2];
  if (x > maxX) return [maxX + 0.3, (minY + maxY) / 2];
  return [(minX + maxX) / 2, y < minY ? minY : maxY];
}
