import type { Vec2 } from '../../frame/index.js';
import { onceForEach } from '../../once.js';
import { box, type Solids } from '../../solid/index.js';
import { type DrawingOptions, laidOutWhole, type Scalable, scalable } from '../board/index.js';
import { chainRow, rowBeside, type Side } from '../dimension/index.js';
import {
  type Box,
  entitiesBox,
  letters,
  movedEntities,
  path,
  roomOf,
  type SheetEntity,
  stroke,
} from '../sheet/index.js';
import {
  type Section,
  sectionEntities,
  sectionOf,
  VIEW_FRAMES,
  type View,
  type ViewName,
  viewBox,
  viewLines,
  viewOf,
  viewPoint,
} from '../view/index.js';
import { heights, type Level, overhangs } from './assembly-levels.js';
import { leanAngles } from './lean-angles.js';
import { seenParts } from './picture.js';

const GAP = 6;

/** A view and what is told beside it; levels in the view's own x or y. */
interface Told {
  readonly view: View;
  readonly name: string;
  readonly rows: Partial<Record<Side, readonly Level[]>>;
  /** Marked where it is cut: x in the view. */
  readonly cutAt?: number;
}

/**
 * The design put together: front, side and top with hidden joints dashed, cut open in the middle; overall sizes, heights, what
 * stands over, and how boards lean.
 */
export function assemblyFigure(solids: Solids, { units, projection }: DrawingOptions): Scalable {
  const third = projection === 'third-angle';
  const parts = seenParts(solids);
  const seen = (name: ViewName) => viewOf(parts, VIEW_FRAMES[name], { hidden: true });
  // in first angle the view from the left stands on the right, and the view from above below
  const sideName = third ? 'right' : 'left';
  const [front, side, top] = [seen('front'), seen(sideName), seen('top')];
  const across = overhangs(solids, 1);
  const { minX, maxX } = viewBox(front);
  const middle = (minX + maxX) / 2;
  const told: readonly Told[] = [
    {
      view: front,
      name: 'front',
      rows: {
        below: whole(front, 'x', 'width'),
        left: whole(front, 'y', 'height'),
        right: heights(solids),
        above: overhangs(solids, 0),
      },
      cutAt: middle,
    },
    {
      view: side,
      name: sideName,
      rows: {
        below: whole(side, 'x', 'depth'),
        // seen from the left, what is in front lies on the right
        above: third ? across : across.map(({ at, what }) => ({ at: -at, what })).toReversed(),
      },
    },
    { view: top, name: 'top', rows: {} },
  ];
  const cut = middleSection(solids)(sideName, middle);
  return scalable(
    'The piece put together from the front, the side and above, and cut open in its middle, with sizes, heights and leans.',
    ({ factor }) => {
      const [a, b, c] = told.map((one) => dimensioned(one, factor, units));
      return laidOutWhole(arranged([a!, b!, c!, cutOpen(cut, factor)], third));
    },
  );
}

const whole = (view: View, axis: 'x' | 'y', what: string): readonly Level[] => {
  const { minX, maxX, minY, maxY } = viewBox(view);
  const [from, to] = axis === 'x' ? [minX, maxX] : [minY, maxY];
  return [
    { at: from, what: `overall ${what}` },
    { at: to, what: 'its end' },
  ];
};

/** The piece cut open: what the plane meets, and what is seen of the boards wholly behind it. */
interface CutOpen {
  readonly section: Section;
  readonly behind: View;
}

/** Cut in the middle, seen as the side view is. */
const middleSection = onceForEach((solids: Solids) => (sideName: 'left' | 'right', x: number): CutOpen => {
  const plane = { ...VIEW_FRAMES[sideName], origin: [x, 0, 0] as const };
  const boxes = [...solids.boards.values()].map(({ body }) => box(body));
  const reach = Math.max(...boxes.flatMap(({ min, max }) => [...min, ...max].map(Math.abs))) + 1;
  const isBehind = (id: string) => {
    const body = solids.boards.get(id)?.body;
    if (!body) return false;
    const { min, max } = box(body);
    return sideName === 'left' ? min[0] > x : max[0] < x;
  };
  return {
    section: sectionOf(solids, plane, { minX: -reach, maxX: reach, minY: -reach, maxY: reach }),
    behind: viewOf(
      seenParts(solids).filter(({ id }) => isBehind(id)),
      plane,
      { hidden: false },
    ),
  };
});

/** Front and top (or top and front) below each other, the side and the section beside them. */
function arranged(
  [front, side, top, cut]: readonly [
    readonly SheetEntity[],
    readonly SheetEntity[],
    readonly SheetEntity[],
    readonly SheetEntity[],
  ],
  third: boolean,
): readonly SheetEntity[] {
  const [f, s, t, c] = [front, side, top, cut].map(entitiesBox) as [Box, Box, Box, Box];
  // views that show the same side by side or above each other stay in line: they share their zero
  const right = Math.max(f.maxX, t.maxX) + GAP;
  const below = third ? Math.max(f.maxY, s.maxY) + GAP : Math.min(f.minY, s.minY) - GAP;
  const onRow = (own: Box) => (third ? below - own.minY : below - own.maxY);
  return [
    ...front,
    ...movedEntities(side, [right - s.minX, 0]),
    ...movedEntities(top, [0, onRow(t)]),
    ...(cut.length === 0 ? [] : movedEntities(cut, [right - s.minX, onRow(c)])),
  ];
}

/** A view with its rows of dimensions, its leans, and its name. */
function dimensioned(
  { view, name, rows, cutAt }: Told,
  factor: number,
  units: DrawingOptions['units'],
): readonly SheetEntity[] {
  const at: Vec2 = [0, 0];
  const lines = viewLines(view, { at, factor });
  const border = entitiesBox(lines);
  const drawn: SheetEntity[] = [...lines];
  for (const [side, levels] of Object.entries(rows)) {
    if (levels.length < 2) continue;
    const place = rowBeside(border, side as Side);
    const stops = levels.map(({ at: value, what }) => ({
      value,
      what,
      point: place.at(value * factor, 0),
    }));
    drawn.push(...chainRow(place, 6, stops, units).dimensions);
  }
  if (cutAt !== undefined) {
    const x = cutAt * factor;
    for (const [from, to] of [
      [border.maxY + 0.5, border.maxY + 4.5],
      [border.minY - 0.5, border.minY - 4.5],
    ] as const) {
      drawn.push(stroke('cutting plane', [x, from], [x, to]));
      drawn.push(letters([x + 1.2, Math.min(from, to) + 0.8], 'A', { bold: true }));
    }
  }
  drawn.push(...leanAngles(view, { at, factor }, roomOf(drawn), border));
  const top = entitiesBox(drawn).maxY;
  return [
    ...drawn,
    letters([(border.minX + border.maxX) / 2, top + 2.5], name, { anchor: 'middle', bold: true }),
  ];
}

/** The section over what lies behind it, with its name. */
function cutOpen({ section, behind }: CutOpen, factor: number): readonly SheetEntity[] {
  const place = { at: [0, 0] as Vec2, factor };
  const drawn: readonly SheetEntity[] = [
    ...viewLines(behind, place),
    ...section.surfaces.flatMap(({ region }) =>
      region.map((loop) => ({
        ...path(
          'visible',
          loop.map((p) => viewPoint(place, p)),
          true,
        ),
        fill: 'paper' as const,
      })),
    ),
    ...sectionEntities(section, place.at, factor),
  ];
  if (drawn.length === 0) return [];
  const { minX, maxX, maxY } = entitiesBox(drawn);
  return [...drawn, letters([(minX + maxX) / 2, maxY + 2.5], 'section A', { anchor: 'middle', bold: true })];
}
