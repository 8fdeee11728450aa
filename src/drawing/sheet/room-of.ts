import type { Vec2 } from '../../frame/index.js';
import { emptyRoom, type Room } from './room.js';
import { type SheetEntity, strokesOf } from './sheet.js';
import { textBox } from './text-width.js';

/** Points round a circle. */
const round = ([x, y]: Vec2, radius: number): readonly Vec2[] =>
  Array.from({ length: 13 }, (_, i) => [
    x + radius * Math.cos((i * Math.PI) / 6),
    y + radius * Math.sin((i * Math.PI) / 6),
  ]);

/** A room with everything that is drawn already. */
export function roomOf(entities: readonly SheetEntity[]): Room {
  const room = emptyRoom();
  for (const one of strokesOf(entities)) {
    if (one.kind === 'text') room.claim(textBox(one));
    else if (one.kind === 'line') room.avoid([one.from, one.to]);
    else if (one.kind === 'circle') room.avoid(round(one.centre, one.radius));
    else if (one.kind === 'polyline') room.avoid(one.closed ? [...one.points, one.points[0]!] : one.points);
  }
  return room;
}
