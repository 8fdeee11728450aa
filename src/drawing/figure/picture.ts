import { exploded } from '../../assembly/index.js';
import { add, type Frame, type Vec2 } from '../../frame/index.js';
import { onceForEach } from '../../once.js';
import { allSolids, featureEdges, type Solids } from '../../solid/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { roomOf } from '../sheet/index.js';
import {
  lookingFrom,
  type SeenPart,
  VIEW_FRAMES,
  type View,
  viewBox,
  viewLines,
  viewOf,
  viewPoint,
  visibleSpots,
  type Wire,
} from '../view/index.js';
import { balloons } from './balloons.js';
import { partsList } from './parts-list.js';

/** Every part of a design as it is seen, apart when `shifts` move it. */
export const seenParts = (
  solids: Solids,
  shifts: ReturnType<typeof exploded> = new Map(),
): readonly SeenPart[] =>
  allSolids(solids).map(({ id, body }) => {
    const shift = shifts.get(id);
    return { id, solid: featureEdges(body), ...(shift ? { shift } : {}) };
  });

/** The axis of every tenon, from its mortise in one board to that in the other, as far as they stand apart. */
const tenonAxes = (solids: Solids, shifts: ReturnType<typeof exploded>): readonly Wire[] =>
  solids.design.joints.flatMap((joint) =>
    joint.tenons.map(({ id, place }) => ({
      id,
      from: add(place.origin, shifts.get(joint.a)!),
      to: add(place.origin, shifts.get(joint.b)!),
    })),
  );

// pictures of a design are the same on every paper, on the page and by themselves

/** The isometric picture: what is seen of the design, without hidden lines. */
export const isometricView = onceForEach(
  (solids: Solids): View => viewOf(seenParts(solids), VIEW_FRAMES.isometric, { hidden: false }),
);

/** The piece drawn apart along its joints, with the axes of its tenons. */
export const explodedView = onceForEach((solids: Solids): View => {
  const shifts = exploded(solids.design);
  return viewOf(seenParts(solids, shifts), VIEW_FRAMES.isometric, {
    hidden: false,
    wires: tenonAxes(solids, shifts),
  });
});

/** Air round a picture for its numbers, mm. */
const AROUND = 12;

/** The piece put together or drawn apart, every part led to by its mark in the parts list. */
export function numberedFigure(
  solids: Solids,
  way: 'put together' | 'drawn apart',
  room: { readonly width: number; readonly height: number },
): DrawnFigure {
  const { view, spots } = way === 'put together' ? putTogether(solids) : drawnApart(solids);
  const box = viewBox(view);
  const factor = Math.min(
    (room.width - 2 * AROUND) / (box.maxX - box.minX),
    (room.height - 2 * AROUND) / (box.maxY - box.minY),
  );
  const height = factor * (box.maxY - box.minY) + 2 * AROUND;
  return {
    kind: 'drawn',
    width: room.width,
    height,
    draw: ([left, low]) => {
      const at: Vec2 = [
        left + (room.width - factor * (box.minX + box.maxX)) / 2,
        low + AROUND - factor * box.minY,
      ];
      const lines = viewLines(view, { at, factor });
      const led = partsList(solids, 'mm').flatMap(({ marks, ids }) =>
        // one ring for all that share a mark, on the first of them that is seen
        marks.flatMap((mark, i) => {
          const own = marks.length === ids.length && marks.length > 1 ? [ids[i]!] : ids;
          const spot = own.map((one) => spots.get(one)).find((one) => one !== undefined);
          return spot === undefined ? [] : [{ mark, at: viewPoint({ at, factor }, spot) }];
        }),
      );
      const within = { minX: left, maxX: left + room.width, minY: low, maxY: low + height };
      return [...lines, ...balloons(roomOf(lines), led, within)];
    },
  };
}

/** Where an exploded picture may be seen from: the first one that shows every part of the list, or the most of them. */
const DIRECTIONS: readonly Frame[] = [
  VIEW_FRAMES.isometric,
  lookingFrom([-1, -1, 1]),
  lookingFrom([1, -1.6, 0.7]),
  lookingFrom([1, -1, -0.8]),
];

/** A picture, and where each part of it can be seen. */
interface Telling {
  readonly view: View;
  readonly spots: ReadonlyMap<string, Vec2>;
}

const putTogether = onceForEach((solids: Solids): Telling => {
  const view = isometricView(solids);
  return { view, spots: visibleSpots(seenParts(solids), VIEW_FRAMES.isometric, view) };
});

const drawnApart = onceForEach((solids: Solids): Telling => {
  const shifts = exploded(solids.design);
  const parts = seenParts(solids, shifts);
  const wires = tenonAxes(solids, shifts);
  // which parts are listed does not depend on the units of their sizes
  const list = partsList(solids, 'mm');
  let best: Telling | undefined;
  let most = -1;
  for (const frame of DIRECTIONS) {
    const view =
      frame === VIEW_FRAMES.isometric ? explodedView(solids) : viewOf(parts, frame, { hidden: false, wires });
    const spots = visibleSpots(parts, frame, view);
    const shown = list.filter(({ ids }) => ids.some((id) => spots.has(id))).length;
    if (shown > most) [best, most] = [{ view, spots }, shown];
    if (shown === list.length) break;
  }
  return best!;
});
