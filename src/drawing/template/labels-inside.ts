import type { Board } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import { area, bounds, contains, type Profile, tessellate } from '../../profile/index.js';
import { SAME_POINT } from '../../tolerances.js';
import { type Box, boxInside, emptyRoom, textBox } from '../sheet/index.js';
import { words } from './strokes.js';
import { type Entity, loopOf, type TextEntity } from './template.js';

/** Heights a label is tried in, mm: its own, then down to the smallest of ISO 3098-1. */
const HEIGHTS: readonly number[] = [7, 5, 4, 3.5, 2.5];

/** How far a label may stray from where it was meant: beside it, or farther; and the step it is moved by, mm. */
const BANDS: readonly (readonly [least: number, most: number])[] = [
  [0, 16],
  [16, 92],
];
const STEP = 2;
const TURNS = 16;

/**
 * The labels of a template, each moved to the nearest place where it stands wholly in the part, off every line, opening, pocket
 * and other label: where there is none, turned, then smaller, then its mark alone; in the end it stands as it was meant.
 *
 * @param name of the board, written in the part where there is room left
 */
export function labelsInside(board: Board, name: string, entities: readonly Entity[]): readonly Entity[] {
  const room = emptyRoom();
  for (const one of entities) room.avoid(pointsOf(one));
  // the outline itself may lie on MARK, or on CUT a little inside: no label crosses either
  room.avoid(ring(board.outline));
  // counter-clockwise encloses what stays
  const holes = entities.flatMap((one) => {
    const loop = loopOf(one);
    return loop && (one.kind === 'circle' || area(loop) < 0) ? [{ loop, box: bounds(loop) }] : [];
  });
  const outer = bounds(board.outline);
  const inPart = (box: Box): boolean => {
    const middle = middleOf(box);
    return (
      boxHolds(outer, middle) &&
      holes.every(({ loop, box }) => !boxHolds(box, middle) || contains(loop, middle) === 'outside') &&
      contains(board.outline, middle) === 'inside'
    );
  };
  const settle = (text: TextEntity): TextEntity | undefined => {
    for (const { start, by, box } of placesOf(text)) {
      // quick, before lines are walked: what reaches out of all of the part crosses its outline
      if (!boxInside(box, outer) || !room.free(box) || !inPart(box) || room.crossed(box) > 0) continue;
      room.claim(box);
      return { ...start, at: moved(start.at, by) };
    }
    return undefined;
  };
  const placed = entities.map((one) => (one.kind === 'text' ? (settle(one) ?? one) : one));
  const title = settle(words(middleOf(outer), name, HEIGHTS[0]!));
  return title ? [...placed, title] : placed;
}

/** Whether a point lies in a box or on its border: quickly asked before an outline is walked. */
const boxHolds = ({ minX, minY, maxX, maxY }: Box, [x, y]: Vec2): boolean =>
  x >= minX - SAME_POINT && x <= maxX + SAME_POINT && y >= minY - SAME_POINT && y <= maxY + SAME_POINT;

const boxOf = (text: TextEntity): Box => textBox({ ...text, anchor: 'start' });

/** A text, moved; and the box it takes there, known without setting its letters again. */
interface Place {
  readonly start: TextEntity;
  readonly by: Vec2;
  readonly box: Box;
}

/** Near places at every height come before far ones at the full height, and all words anywhere before the mark alone. */
function* placesOf(text: TextEntity): Generator<Place> {
  const [mark = ''] = text.text.split(' ');
  const turned = text.rotationDeg === 0 ? 90 : 0;
  const meant = middleOf(boxOf(text));
  for (const said of new Set([text.text, mark]))
    for (const [least, most] of BANDS)
      for (const height of HEIGHTS.filter((one) => one <= text.height))
        for (const rotationDeg of [text.rotationDeg, turned]) {
          const start = centred({ ...text, text: said, height, rotationDeg }, meant);
          const box = boxOf(start);
          for (let reach = least; reach < most; reach += STEP)
            for (const by of roundAbout(reach)) yield { start, by, box: movedBox(box, by) };
        }
}

/** Ways to move, all as far. */
const roundAbout = (reach: number): readonly Vec2[] =>
  reach === 0 ? [[0, 0]] : DIRECTIONS.map(([x, y]) => [reach * x, reach * y]);

const DIRECTIONS: readonly Vec2[] = Array.from({ length: TURNS }, (_, turn) => {
  const angle = (turn * 2 * Math.PI) / TURNS;
  return [Math.cos(angle), Math.sin(angle)];
});

const moved = ([x, y]: Vec2, [dx, dy]: Vec2): Vec2 => [x + dx, y + dy];

const movedBox = ({ minX, minY, maxX, maxY }: Box, [dx, dy]: Vec2): Box => ({
  minX: minX + dx,
  minY: minY + dy,
  maxX: maxX + dx,
  maxY: maxY + dy,
});

const middleOf = (box: Box): Vec2 => [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];

/** A text moved so that its box has its middle at a point. */
function centred(text: TextEntity, [x, y]: Vec2): TextEntity {
  const [mx, my] = middleOf(boxOf(text));
  return { ...text, at: [text.at[0] + x - mx, text.at[1] + y - my] };
}

function pointsOf(one: Entity): readonly Vec2[] {
  if (one.kind === 'line') return [one.from, one.to];
  const loop = loopOf(one);
  return loop ? ring(loop) : [];
}

const ring = (loop: Profile): readonly Vec2[] => {
  const points = tessellate(loop);
  return [...points, points[0]!];
};
