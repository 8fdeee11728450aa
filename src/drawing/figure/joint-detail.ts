import type { Mortise } from '../../board/index.js';
import { cross, scale, type Vec2, type Vec3 } from '../../frame/index.js';
import type { Tenon } from '../../joinery/index.js';
import { type Region, regionBounds } from '../../profile/index.js';
import { boardMarks } from '../../shop/index.js';
import type { Solids } from '../../solid/index.js';
import { type DrawingOptions, laidOutWhole, type Scalable, scalable } from '../board/index.js';
import { chainRow, rowBeside, type Side } from '../dimension/index.js';
import {
  type Box,
  bestPlace,
  boxLoop,
  entitiesBox,
  fitRows,
  letters,
  path,
  roomOf,
  type SheetEntity,
  SMALL,
  type Stop,
  stroke,
  textWidth,
  toolRows,
} from '../sheet/index.js';
import { type Section, sectionEntities, sectionOf, viewPoint } from '../view/index.js';
import { type JointKind, mortisesOf } from './joint-kinds.js';

/** Wood shown round the mortises, mm. */
const ROUND = 6;
const ROUND_ACROSS = 18;

const GAP = 6;

/**
 * A joint cut open twice through its first tenon, along the mortise's length and across it, with depths, fit and tenon; the
 * way up it stands in the piece.
 */
export function jointFigure(solids: Solids, { joint }: JointKind, { units }: DrawingOptions): Scalable {
  const marks = boardMarks(solids.design.boards.map(({ board }) => board.id));
  const tenon = joint.tenons[0]!;
  const mortises = mortisesOf(solids, joint, tenon);
  const [a, b] = mortises;
  const [low, high] = [-Math.max(a.depth, tenon.intoA) - ROUND, Math.max(b.depth, tenon.intoB) + ROUND];
  const lie = lieOf(tenon);
  const sections = [
    lie.cut(solids, tenon.place.x, Math.max(a.length, b.length) / 2 + ROUND, [low, high]),
    lie.cut(solids, tenon.place.y, ROUND_ACROSS, [low, high]),
  ] as const;
  return scalable(
    `Joint ${joint.id} cut open along its mortises and across them, with its depths.`,
    ({ factor }) => laidOutWhole(laidOut(sections, tenon, mortises, factor, [0, 0], lie, { units, marks })),
  );
}

/** How a joint lies on the sheet: its depth upright or level, as it stands in the piece. */
interface Lie {
  readonly upright: boolean;
  /** Of the depth on the sheet: 1 where the second board lies above, or to the right. */
  readonly sense: 1 | -1;
  readonly cut: (solids: Solids, along: Vec3, half: number, depth: readonly [number, number]) => Section;
}

function lieOf({ place: { origin, z } }: Tenon): Lie {
  const upright = Math.abs(z[2]) > Math.SQRT1_2;
  const sense = (upright ? z[2] : z[0]) < -1e-9 ? -1 : 1;
  const deep = scale(z, sense);
  return {
    upright,
    sense,
    cut: (solids, along, half, [low, high]) => {
      const [least, most] = sense > 0 ? [low, high] : [-high, -low];
      const [x, y] = upright ? [along, deep] : [deep, along[2] < 0 ? scale(along, -1) : along];
      const window: Box = upright
        ? { minX: -half, maxX: half, minY: least, maxY: most }
        : { minX: least, maxX: most, minY: -half, maxY: half };
      return sectionOf(solids, { origin, x, y, z: cross(x, y) }, window);
    },
  };
}

function laidOut(
  [length, across]: readonly [Section, Section],
  tenon: Tenon,
  [a, b]: readonly [Mortise, Mortise],
  factor: number,
  at: Vec2,
  { upright, sense }: Lie,
  options: Pick<DrawingOptions, 'units'> & Marked,
): readonly SheetEntity[] {
  const deep = (...stops: readonly (readonly [number, string])[]) =>
    stops.map(([value, what]) => [sense * value, what] as const);
  const wide = (size: number, what: string, rows?: Stop['rows']) =>
    [
      [-size / 2, what],
      [size / 2, `other ${what}`, rows],
    ] as const;
  const [deepSide, otherSide, mortiseSide, tenonSide]: readonly Side[] = upright
    ? ['left', 'right', 'above', 'below']
    : ['above', 'below', 'left', 'right'];
  const first = withDimensions(length, at, factor, options, 'section along the mortises', {
    [deepSide!]: deep(
      [-a.depth, `bottom of the mortise in ${a.face}`],
      [0, 'seat'],
      [b.depth, `bottom of the mortise in ${b.face}`],
    ),
    [otherSide!]: deep([-tenon.intoA, 'end of the tenon'], [tenon.intoB, 'other end of the tenon']),
    [mortiseSide!]: wide(b.length, 'end of the mortise'),
    [tenonSide!]: wide(tenon.width, 'edge of the tenon'),
  });
  const second = (place: Vec2) =>
    withDimensions(across, place, factor, options, 'section across', {
      [mortiseSide!]: wide(b.width, 'cheek of the mortise', toolRows),
      [tenonSide!]: wide(tenon.thickness, 'face of the tenon', fitRows),
    });
  const box = entitiesBox(first);
  const own = entitiesBox(second([0, 0]));
  return [...first, ...second([box.maxX + GAP - own.minX, at[1]])];
}

interface Marked {
  readonly marks: ReadonlyMap<string, string>;
}

type Chains = Partial<Record<Side, readonly (readonly [value: number, what: string, rows?: Stop['rows']])[]>>;

/** A section with a chain of dimensions on some of its sides, its axis and its caption. */
function withDimensions(
  section: Section,
  at: Vec2,
  factor: number,
  { units, marks }: Pick<DrawingOptions, 'units'> & Marked,
  caption: string,
  chains: Chains,
): readonly SheetEntity[] {
  const { window } = section;
  const corner = (x: number, y: number) => viewPoint({ at, factor }, [x, y]);
  const [[minX, minY], [maxX, maxY]] = [corner(window.minX, window.minY), corner(window.maxX, window.maxY)];
  const border: Box = { minX, minY, maxX, maxY };
  const rows = Object.entries(chains).flatMap(([side, stops]) => {
    const place = rowBeside(border, side as Side);
    const upright = side === 'left' || side === 'right';
    const placed = stops.map(([value, what, rows]): Stop => {
      const [x, y] = upright ? corner(0, value) : corner(value, 0);
      return { value, what, point: place.at(upright ? y : x, -1), ...(rows && { rows }) };
    });
    return chainRow(place, 5, placed, units, 'each by itself').dimensions;
  });
  const drawn: SheetEntity[] = [
    ...sectionEntities(section, at, factor),
    stroke('centre', corner(0, window.minY), corner(0, window.maxY)),
    ...rows,
  ];
  drawn.push(...boardMarksOn(section, marks, ([x, y]) => corner(x, y), drawn));
  const top = entitiesBox(drawn).maxY;
  return [...drawn, letters([(minX + maxX) / 2, top + 2], caption, { anchor: 'middle', bold: true })];
}

/** The mark of each board of a section in its wood, on a ground of its own, where no line of another runs. */
function boardMarksOn(
  { surfaces }: Section,
  marks: ReadonlyMap<string, string>,
  place: (p: Vec2) => Vec2,
  drawn: readonly SheetEntity[],
): readonly SheetEntity[] {
  const room = roomOf(drawn.filter(({ kind }) => kind !== 'hatch'));
  return surfaces
    .filter((surface) => surface.kind === 'board')
    .flatMap(({ part, region }) => {
      const words = marks.get(part) ?? part;
      const [w, h] = [textWidth(words, SMALL, true) / 2 + 0.6, SMALL / 2 + 0.9];
      const boxAt = ([x, y]: Vec2): Box => ({ minX: x - w, maxX: x + w, minY: y - h, maxY: y + h });
      const { minX, maxX, minY, maxY } = regionBounds(region);
      const spots = SHARES.flatMap((u) =>
        SHARES.map((v): Vec2 => [minX + u * (maxX - minX), minY + v * (maxY - minY)]),
      );
      const best = bestPlace(room, spots.filter((p) => inRegion(region, p)).map(place), boxAt);
      if (!best) return [];
      const box = boxAt(best);
      room.claim(box);
      const ground = path('table', boxLoop(box), true);
      return [
        { ...ground, fill: 'paper' as const },
        letters([best[0], best[1] - SMALL / 2], words, { anchor: 'middle', bold: true }),
      ];
    });
}

const SHARES: readonly number[] = [0.5, 0.3, 0.7, 0.12, 0.88, 0.2, 0.8, 0.06, 0.94];

/** Whether a point lies in a region: even-odd. */
const inRegion = (region: Region, [x, y]: Vec2): boolean =>
  region.reduce(
    (inside, loop) =>
      loop.reduce((odd, p, i) => {
        const q = loop[(i + 1) % loop.length]!;
        const crosses = p[1] > y !== q[1] > y && x < p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1]);
        return crosses ? !odd : odd;
      }, inside),
    false,
  );
