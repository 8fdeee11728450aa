import { exploded } from '../../assembly/index.js';
import { add, type Frame, type Vec2 } from '../../frame/index.js';
import { onceForEach } from '../../once.js';
import { allSolids, featureEdges, type Solid, type Solids } from '../../solid/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { colourOf, hasGrain, roomOf } from '../sheet/index.js';
import {
  type Look,
  lookingFrom,
  type Scene,
  type SeenPart,
  sceneOf,
  seenAtAll,
  VIEW_FRAMES,
  type View,
  viewBox,
  viewIn,
  viewLines,
  viewPoint,
  visibleSpots,
  type Wire,
} from '../view/index.js';
import { balloons } from './balloons.js';
import { type ListedPart, partsList } from './parts-list.js';

/** Every part of a design as it is seen, apart when `shifts` move it. */
export const seenParts = (
  solids: Solids,
  shifts: ReturnType<typeof exploded> = new Map(),
): readonly SeenPart[] =>
  allSolids(solids).map((solid) => {
    const shift = shifts.get(solid.id);
    return {
      id: solid.id,
      solid: featureEdges(solid.body),
      look: lookOf(solid),
      ...(shift ? { shift } : {}),
    };
  });

/** What a piece is of, to the eye. */
export function lookOf(solid: Solid): Look {
  const colour = colourOf(solid);
  if (solid.kind === 'hardware') return { colour };
  if (solid.kind === 'board') {
    const { material, blank } = solid.board;
    return hasGrain(material) ? { colour, wood: { frame: solid.place, ...blank } } : { colour };
  }
  const { place, width, thickness } = solid.tenon;
  // a tenon's grain runs along its length
  const frame = { origin: place.origin, x: place.z, y: place.x, z: place.y };
  return { colour, wood: { frame, width, thickness } };
}

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
export const isometricView = (solids: Solids): View => isometric(solids).view;

const isometric = onceForEach((solids: Solids): { readonly scene: Scene; readonly view: View } => {
  const scene = sceneOf(seenParts(solids), VIEW_FRAMES.isometric);
  return { scene, view: viewIn(scene, { hidden: false, toned: 'standing' }) };
});

/** The piece drawn apart along its joints, with the axes of its tenons. */
export const explodedView = (solids: Solids): View => drawnApart(solids).view;

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
    said: `${solids.design.title} ${way}, every part led to by its mark; the table below names them.`,
    width: room.width,
    height,
    draw: ([left, low]) => {
      const at: Vec2 = [
        left + (room.width - factor * (box.minX + box.maxX)) / 2,
        low + AROUND - factor * box.minY,
      ];
      const lines = viewLines(view, { at, factor });
      const led = markedSpots(partsList(solids, 'mm'), spots).map(({ mark, spot }) => ({
        mark,
        at: viewPoint({ at, factor }, spot),
      }));
      const within = { minX: left, maxX: left + room.width, minY: low, maxY: low + height };
      return [...lines, ...balloons(roomOf(lines), led, within)];
    },
  };
}

/** A spot of every mark: one for all that share it, on the first of them that is seen. */
export const markedSpots = (
  parts: readonly ListedPart[],
  spots: Telling['spots'],
): readonly { readonly mark: string; readonly spot: Vec2 }[] =>
  parts.flatMap(({ marks, ids }) =>
    marks.flatMap((mark, i) => {
      const own = marks.length === ids.length && marks.length > 1 ? [ids[i]!] : ids;
      const spot = own.map((one) => spots.get(one)).find((one) => one !== undefined);
      return spot === undefined ? [] : [{ mark, spot }];
    }),
  );

/** Where a piece drawn apart is seen from: lower than put together, so that tenons show below what they carry; or else from here. */
const DIRECTIONS: readonly Frame[] = [
  lookingFrom([1, -2, 0.95]),
  lookingFrom([-1, -2, 0.95]),
  lookingFrom([1, -1.6, 0.5]),
  lookingFrom([1, -1, -0.8]),
];

/** Air beyond a drawn-out tenon, mm, until every tenon is seen: the least that does it. */
const AIRS: readonly number[] = [25, 60, 110, 160];

/** A picture, and where each part of it can be seen. */
interface Telling {
  readonly view: View;
  readonly spots: ReadonlyMap<string, Vec2>;
}

export const putTogether = onceForEach((solids: Solids): Telling => {
  const { scene, view } = isometric(solids);
  return { view, spots: visibleSpots(scene, view) };
});

/** From the first direction that shows every part of the list, or most of them, as far apart as every tenon needs to be seen. */
const drawnApart = onceForEach((solids: Solids): Telling => {
  // which parts are listed does not depend on the units of their sizes
  const list = partsList(solids, 'mm');
  let best: { scene: Scene; wires: readonly Wire[] } | undefined;
  let most = -1;
  for (const frame of DIRECTIONS) {
    for (const air of AIRS) {
      const shifts = exploded(solids.design, air);
      const parts = seenParts(solids, shifts);
      const scene = sceneOf(parts, frame);
      const seen = seenAtAll(scene);
      const shown = list.filter(({ ids }) => ids.some((id) => seen.has(id))).length;
      const share = shown + seen.size / parts.length;
      if (share > most) {
        most = share;
        best = { scene, wires: tenonAxes(solids, shifts) };
      }
      if (seen.size === parts.length) break;
    }
    if (most >= list.length) break;
  }
  const { scene, wires } = best!;
  const view = viewIn(scene, { hidden: false, wires, toned: 'apart' });
  return { view, spots: visibleSpots(scene, view) };
});
