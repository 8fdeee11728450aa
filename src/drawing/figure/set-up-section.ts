import type { Vec2 } from '../../frame/index.js';
import type { RailSetting, SetupCard } from '../../shop/index.js';
import { chainRow, type RowPlace, rowBeside } from '../dimension/index.js';
import type { DrawnFigure } from '../flow/index.js';
import {
  type Box,
  type DrawingUnits,
  entitiesBox,
  hatchOf,
  labelAt,
  letters,
  movedEntities,
  path,
  roomOf,
  type SheetEntity,
  type Stop,
} from '../sheet/index.js';
import { RAIL } from './set-up-size.js';

/** Thickness of plate, base and what carries the stop, mm at full size: their real ones do not matter here. */
const [PLATE, BASE, STEP] = [12, 8, 5];

/** Of the router's body: half its width, its height, and how high it hangs over the base when the cutter is down. */
const [BODY, TALL, OVER] = [18, 26, 12];

/** The stop rod's middle from the cutter's centre, its width. */
const [ROD, THICK] = [29, 5];

/** Wood shown beside the cutter where no rail stands, below the mortise, and of a rail below the plate. */
const [BESIDE, UNDER] = [34, 8];

/** The highest drawing, and what dimensions and the room between both states take of its width, mm on the sheet. */
const MOST = 40;
const TAKEN = 27;

const GAP = 5;

/**
 * A set-up cut through across its mortise, you on the left: as depth is zeroed, with the depth block, and with the cutter down; work, wedges,
 * rails or guide, plate, base, cutter and stop, each figure beside what it sets.
 *
 * @param room mm on the sheet: width
 */
export function setUpSection(card: SetupCard, units: DrawingUnits, room: number): DrawnFigure {
  const { left, right } = reachOf(card);
  const tall = card.depth + UNDER + topOf(card) + card.depth;
  const wide = 2 * (right - left);
  const factor = Math.min((room - TAKEN) / wide, MOST / tall, 0.5);
  const figure = figureAt(card, units, factor);
  // figures keep their size, so the set-up gives way
  const over = figure.width - room;
  return over <= 0 ? figure : figureAt(card, units, Math.max(factor - over / wide, factor / 3));
}

function figureAt(card: SetupCard, units: DrawingUnits, factor: number): DrawnFigure {
  const zero = state(card, factor, 'zeroed', units);
  const down = state(card, factor, 'down', units);
  const [a, b] = [entitiesBox(zero), entitiesBox(down)];
  const low = Math.min(a.minY, b.minY);
  const shift = a.maxX - b.minX + GAP;
  return {
    kind: 'drawn',
    said: `Card ${card.id} cut through across the mortise, you on the left: first as depth is zeroed, the depth block under the stop rod, then with the cutter down; the chain below tells the faces of ${card.nearRail ? 'rails, work and cutter' : 'guide and cutter'} from left to right.`,
    width: b.maxX + shift - a.minX,
    height: Math.max(a.maxY, b.maxY) - low,
    draw: ([x, y]) => [
      ...movedEntities(zero, [x - a.minX, y - low]),
      ...movedEntities(down, [x - a.minX + shift, y - low]),
    ],
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

/** What the router stands on: the jig's plate, a template, or the wood itself. */
const standsOn = ({ nearRail, farRail, window }: SetupCard): number =>
  nearRail || farRail ? PLATE : window ? BASE : 0;

const topOf = (card: SetupCard): number => standsOn(card) + BASE + OVER + TALL;

/** A rail's side of the work, and its wedge: how far from the cutter's centre, at a height, mm. */
const sideAt = (rail: RailSetting | undefined, v: number): number => {
  if (!rail) return BESIDE;
  const { distance, wedge } = rail;
  if (!wedge) return rail.toWork;
  const slope = wedge.thickEnd === 'up' ? 1 : wedge.thickEnd === 'down' ? -1 : 0;
  return distance - (wedge.thicknessAtMouth + slope * v * Math.tan((wedge.angleDeg * Math.PI) / 180));
};

function state(
  card: SetupCard,
  factor: number,
  what: 'zeroed' | 'down',
  units: DrawingUnits,
): readonly SheetEntity[] {
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
  const down = what === 'down';
  const half = cutter / 2;
  const [near, far] = [(v: number) => -sideAt(nearRail, v), (v: number) => sideAt(farRail, v)];
  const slot: readonly Vec2[] = down
    ? [
        [-half, 0],
        [-half, -depth],
        [half, -depth],
        [half, 0],
      ]
    : [];
  const work: readonly Vec2[] = [
    [near(0), 0],
    ...slot,
    [far(0), 0],
    [far(bottom), bottom],
    [near(bottom), bottom],
  ];
  const base = standsOn(card);
  const lift = down ? 0 : depth;
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
  const rodFoot = carrier + STEP + lift;
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
    ...(down ? [] : cut('depth block', box(ROD - 4, carrier + STEP, ROD + 4, rodFoot), 0, 0.9)),
    solid(box(ROD - THICK / 2, rodFoot, ROD + THICK / 2, carrier + OVER + TALL + lift)),
    solid(box(0, carrier + OVER + TALL - 8 + lift, ROD + THICK / 2 + 2, carrier + OVER + TALL - 2 + lift)),
    solid(box(-BODY, carrier + OVER + lift, BODY, carrier + OVER + TALL + lift)),
    solid(box(-half, down ? -depth : 0, half, carrier + OVER + lift)),
  ];
  const border: Box = {
    minX: at(left, 0)[0],
    maxX: at(right, 0)[0],
    minY: at(0, bottom)[1],
    maxY: at(0, topOf(card) + lift)[1],
  };
  if (down) drawn.push(...chainsOf(card, border, at, units));
  else {
    const row = rowBeside(border, 'right');
    drawn.push(
      ...pair(row, [rodFoot - lift, rodFoot], 'depth block', (v) => row.at(at(0, v)[1], 0), units),
      ...names(card, drawn, at, bottom, border),
    );
  }
  const title = down ? 'lowest pass' : 'depth zeroed';
  drawn.push(letters([border.minX, entitiesBox(drawn).maxY + 1.5], title, { bold: true }));
  return drawn;
}

/** From left to right: rail, wedge, work, cutter and what lies beyond it; and how deep. */
function chainsOf(
  { nearRail, farRail, guideOffset, cutter, depth }: SetupCard,
  border: Box,
  at: (u: number, v: number) => Vec2,
  units: DrawingUnits,
): readonly SheetEntity[] {
  const stops: readonly (readonly [number, string])[] = [
    ...(nearRail ? [[-nearRail.distance, 'face of the near rail'] as const] : []),
    ...(nearRail?.wedge ? [[-nearRail.toWork, 'near side of the work'] as const] : []),
    [-cutter / 2, 'near flank of the cutter'],
    [cutter / 2, 'far flank of the cutter'],
    ...(farRail?.wedge ? [[farRail.toWork, 'far side of the work'] as const] : []),
    ...(farRail ? [[farRail.distance, 'face of the far rail'] as const] : []),
    ...(guideOffset === undefined ? [] : [[guideOffset, "guide board's edge"] as const]),
  ];
  const below = rowBeside(border, 'below');
  const side = rowBeside(border, 'left');
  const placed = stops.map(([value, what]): Stop => ({ value, what, point: below.at(at(value, 0)[0], 0) }));
  return [
    ...chainRow(below, 4, placed, units).dimensions,
    ...pair(side, [-depth, 0], 'depth', (v) => side.at(at(0, v)[1], 0), units),
  ];
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

/** What is what, in words beside it. */
function names(
  { nearRail, farRail, guideOffset, window }: SetupCard,
  drawn: readonly SheetEntity[],
  at: (u: number, v: number) => Vec2,
  bottom: number,
  { minX, maxX, minY }: Box,
): readonly SheetEntity[] {
  const room = roomOf(drawn.filter(({ kind }) => kind !== 'hatch'));
  const wedged = [nearRail, farRail].find((rail) => rail?.wedge);
  const wedge = wedged?.wedge ? wedged.distance - wedged.wedge.thicknessAtMouth / 2 : 0;
  const spots: readonly (readonly [string, number, number])[] = [
    ...(wedged ? [['wedge', wedged === nearRail ? -wedge : wedge, bottom * 0.7] as const] : []),
    ...(nearRail ? [['near rail', -nearRail.distance - RAIL * 0.7, bottom * 0.5] as const] : []),
    ...(farRail ? [['far rail', farRail.distance + RAIL * 0.7, bottom * 0.5] as const] : []),
    ...(guideOffset === undefined ? [] : [['guide board', guideOffset + RAIL / 2, 10] as const]),
    ...(window ? [['template', -30, BASE / 2] as const] : []),
    ['work', 0, bottom * 0.8],
  ];
  // below the drawing, where the other state has its chain
  const within = { minX: minX - 1, maxX: maxX + 10, minY: minY - 24, maxY: minY - 0.5 };
  return spots.flatMap(([words, u, v]) => labelAt(room, at(u, v), words, 1, { leader: 'always', within }));
}
