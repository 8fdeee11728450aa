import type { Vec2 } from '../../frame/index.js';
import { forRouter } from '../../length/index.js';
import type { RailSetting, SetupCard } from '../../shop/index.js';
import { chainRow, type RowPlace, rowBeside } from '../dimension/index.js';
import type { DrawnFigure } from '../flow/index.js';
import {
  type Box,
  type DrawingUnits,
  entitiesBox,
  hatchOf,
  movedEntities,
  path,
  type SheetEntity,
  type Stop,
  toolRows,
} from '../sheet/index.js';
import { standsOn } from './router-parts.js';
import { BASE, RAIL } from './set-up-size.js';

/** What carries the stop rod, mm at full size: its real height does not matter here. */
const STEP = 5;

/** Of the router's body: half its width, its height, and how high it hangs over the base when the cutter is down. */
const [BODY, TALL, OVER] = [18, 26, 12];

/** The stop rod's middle from the cutter's centre, its width. */
const [ROD, THICK] = [29, 5];

/** Wood shown beside the cutter where no rail stands, below the mortise, and of a rail below the plate. */
const [BESIDE, UNDER] = [34, 8];

/** The highest drawing, mm on the sheet, its figures and words left out. */
const MOST = 29;

/**
 * A set-up cut through across its mortise, you on the left, as depth is zeroed: work, wedges, rails or guide, plate, base, cutter, stop and
 * depth block, each figure beside what it sets; dashed what the lowest pass cuts.
 *
 * @param room mm on the sheet: width
 */
export function setUpSection(card: SetupCard, units: DrawingUnits, room: number): DrawnFigure {
  const { left, right } = reachOf(card);
  const tall = 2 * card.depth + UNDER + topOf(card);
  const wide = right - left;
  const factor = Math.min(room / wide, MOST / tall, 0.5);
  const figure = figureAt(card, units, factor);
  // figures keep their size, so the set-up gives way
  const over = figure.width - room;
  return over <= 0 ? figure : figureAt(card, units, Math.max(factor - over / wide, factor / 3));
}

function figureAt(card: SetupCard, units: DrawingUnits, factor: number): DrawnFigure {
  const drawn = section(card, factor, units);
  const box = entitiesBox(drawn);
  return {
    kind: 'drawn',
    said: `Card ${card.id} cut through across the mortise, you on the left, as depth is zeroed: the depth block lies under the stop rod; dashed what the lowest pass cuts.${card.nearRail || card.farRail ? ' The chains below tell what a rule finds between the flanks of the cutter and each rail.' : ''}`,
    width: box.maxX - box.minX,
    height: box.maxY - box.minY,
    draw: ([x, y]) => movedEntities(drawn, [x - box.minX, y - box.minY]),
  };
}

/** How far the drawing reaches from the cutter's centre. */
function reachOf({ nearRail, farRail, guideOffset }: SetupCard): {
  readonly left: number;
  readonly right: number;
} {
  const out = BODY + 24;
  return {
    left: -Math.max(nearRail ? nearRail.distance + RAIL : BESIDE, out),
    right: Math.max(
      farRail ? farRail.distance + RAIL : 0,
      guideOffset === undefined ? BESIDE : guideOffset + RAIL,
      out,
    ),
  };
}

const topOf = (card: SetupCard): number => standsOn(card) + BASE + OVER + TALL;

/** A rail's side of the work, and its wedge: how far from the cutter's centre, at a height, mm. */
const sideAt = (rail: RailSetting | undefined, v: number): number => {
  if (!rail) return BESIDE;
  const { distance, wedge } = rail;
  if (!wedge) return rail.toWork;
  const slope = wedge.thickEnd === 'up' ? 1 : wedge.thickEnd === 'down' ? -1 : 0;
  return distance - (wedge.thicknessAtMouth + slope * v * Math.tan((wedge.angleDeg * Math.PI) / 180));
};

function section(card: SetupCard, factor: number, units: DrawingUnits): readonly SheetEntity[] {
  const { nearRail, farRail, guideOffset, cutter, depth } = card;
  const at = (u: number, v: number): Vec2 => [u * factor, v * factor];
  const loop = (points: readonly Vec2[]) => points.map(([u, v]) => at(u, v));
  const box = (u1: number, v1: number, u2: number, v2: number): readonly Vec2[] => [
    [u1, v1],
    [u2, v1],
    [u2, v2],
    [u1, v2],
  ];
  const cut = (
    name: string,
    points: readonly Vec2[],
    angle: number,
    spacing: number,
  ): readonly SheetEntity[] => [
    hatchOf(name, [loop(points)], angle, spacing),
    path('visible', loop(points), true),
  ];
  const solid = (points: readonly Vec2[]): SheetEntity => ({
    ...path('visible', loop(points), true),
    fill: 'paper',
  });
  const { left, right } = reachOf(card);
  const bottom = -(depth + UNDER);
  const half = cutter / 2;
  const [near, far] = [(v: number) => -sideAt(nearRail, v), (v: number) => sideAt(farRail, v)];
  const work: readonly Vec2[] = [
    [near(0), 0],
    [far(0), 0],
    [far(bottom), bottom],
    [near(bottom), bottom],
  ];
  const base = standsOn(card);
  const carrier = base + BASE;
  const rails = [
    ...(nearRail ? [[-nearRail.distance - RAIL, -nearRail.distance] as const] : []),
    ...(farRail ? [[farRail.distance, farRail.distance + RAIL] as const] : []),
  ];
  const wedges = [
    ...(nearRail?.wedge ? [{ face: -nearRail.distance, side: near }] : []),
    ...(farRail?.wedge ? [{ face: farRail.distance, side: far }] : []),
  ];
  const [plateLeft, plateRight] = [left + 1, guideOffset === undefined ? right - 1 : guideOffset];
  const hole = half + 5;
  const plates = (v1: number, v2: number, l: number, r: number) => [
    ...cut('plate', box(l, v1, -hole, v2), 30, 1.2),
    ...cut('plate', box(hole, v1, r, v2), 30, 1.2),
  ];
  const rodFoot = carrier + STEP + depth;
  const drawn: SheetEntity[] = [
    ...cut('work', work, 45, 2.6),
    ...rails.flatMap(([l, r]) => cut('rail', box(l, bottom, r, 0), 135, 1.8)),
    ...wedges.flatMap(({ face, side }) =>
      cut(
        'wedge',
        [
          [face, 0],
          [side(0), 0],
          [side(bottom), bottom],
          [face, bottom],
        ],
        90,
        0.8,
      ),
    ),
    ...(guideOffset === undefined ? [] : cut('guide', box(guideOffset, 0, guideOffset + RAIL, 14), 135, 1.8)),
    ...(base > 0 ? plates(0, base, plateLeft, plateRight) : []),
    ...plates(base, carrier, Math.max(left, -BODY - 20), guideOffset ?? BODY + 20),
    // the turret's lowest step, the rod over it, and what carries the rod
    solid(box(ROD - 5, carrier, ROD + 5, carrier + STEP)),
    ...cut('depth block', box(ROD - 4, carrier + STEP, ROD + 4, rodFoot), 0, 0.9),
    solid(box(ROD - THICK / 2, rodFoot, ROD + THICK / 2, carrier + OVER + TALL + depth)),
    solid(box(0, carrier + OVER + TALL - 8 + depth, ROD + THICK / 2 + 2, carrier + OVER + TALL - 2 + depth)),
    solid(box(-BODY, carrier + OVER + depth, BODY, carrier + OVER + TALL + depth)),
    solid(box(-half, 0, half, carrier + OVER + depth)),
    path('hidden', loop(box(-half, 0, half, -depth)), true),
  ];
  const border: Box = {
    minX: at(left, 0)[0],
    maxX: at(right, 0)[0],
    minY: at(0, bottom)[1],
    maxY: at(0, topOf(card) + depth)[1],
  };
  const set = forRouter(units);
  const [row, side] = [rowBeside(border, 'right'), rowBeside(border, 'left')];
  return [
    ...drawn,
    ...pair(row, [rodFoot - depth, rodFoot], 'depth block', (v) => row.at(at(0, v)[1], 0), set),
    ...pair(side, [-depth, 0], 'depth', (v) => side.at(at(0, v)[1], 0), set),
    ...chainOf(card, border, at, units),
  ];
}

/** From rail to rail past the cutter's flanks, where a rule reaches: wedge, wood beside the cutter, cutter. */
function chainOf(
  { nearRail, farRail, cutter }: SetupCard,
  border: Box,
  at: (u: number, v: number) => Vec2,
  units: DrawingUnits,
): readonly SheetEntity[] {
  if (!nearRail && !farRail) return [];
  const below = rowBeside(border, 'below');
  const side = (rail: RailSetting | undefined, sign: 1 | -1, name: string) => [
    ...(rail ? [[sign * rail.distance, `face of the ${name} rail`] as const] : []),
    ...(rail?.wedge ? [[sign * rail.toWork, `${name} side of the work`] as const] : []),
    [(sign * cutter) / 2, `${name} flank of the cutter`] as const,
  ];
  const stops = [...side(nearRail, -1, 'near'), ...side(farRail, 1, 'far')];
  const placed = stops.map(
    ([value, what]): Stop => ({
      value,
      what,
      point: below.at(at(value, 0)[0], 0),
      // between its flanks the cutter is what it was bought as
      ...(value === cutter / 2 && { rows: toolRows }),
    }),
  );
  return chainRow(below, 4, placed, forRouter(units), 'each by itself').dimensions;
}

const pair = (
  row: RowPlace,
  [from, to]: readonly [number, number],
  what: string,
  point: (value: number) => Vec2,
  units: DrawingUnits,
): readonly SheetEntity[] =>
  chainRow(
    row,
    3,
    [
      { value: from, what: `${what} from`, point: point(from) },
      { value: to, what, point: point(to) },
    ],
    units,
  ).dimensions;
