import type { Mortise } from '../../board/index.js';
import { type Frame, scale, type Vec2 } from '../../frame/index.js';
import { type Joint, shortBy, type Tenon } from '../../joinery/index.js';
import { printFine, trimmed } from '../../length/index.js';
import { type Region, regionBounds } from '../../profile/index.js';
import type { Solids } from '../../solid/index.js';
import { type DrawingOptions, drawableOf } from '../board/index.js';
import { chainRow, rowBeside, type Side } from '../dimension/index.js';
import {
  type Box,
  DETAIL_SCALES,
  type Draft,
  dimensionRows,
  drawnTable,
  entitiesBox,
  labelAt,
  letters,
  type Orientation,
  pageOf,
  roomOf,
  type SheetEntity,
  STEP,
  type Stop,
  sayIn,
  stroke,
  wrappedTable,
} from '../sheet/index.js';
import { type Section, sectionEntities, sectionOf, viewPoint } from '../view/index.js';

/** Wood shown round the mortises, mm. */
const ROUND = 14;
const ROUND_ACROSS = 24;

const GAP = 6;

/** Joints that are made alike, with every joint each stands for. */
export interface JointKind {
  readonly joint: Joint;
  readonly alike: readonly Joint[];
}

/** The joints of a design, those with the same tenons, mortises and boards' thicknesses taken together. */
export function jointKinds(solids: Solids): readonly JointKind[] {
  const kinds = new Map<string, Joint[]>();
  for (const joint of solids.design.joints) {
    const figures = joint.tenons.flatMap((tenon) => {
      const [a, b] = mortisesOf(solids, joint, tenon);
      const mitres = [tenon.mitreA?.angleDeg ?? 0, tenon.mitreB?.angleDeg ?? 0];
      return [
        ...[tenon.thickness, tenon.width, tenon.intoA, tenon.intoB, ...mitres],
        ...[a.depth, b.depth, a.width, a.length],
      ];
    });
    const thick = [joint.a, joint.b].map((id) => solids.boards.get(id)!.board.blank.thickness);
    const key = [...figures, ...thick].map((figure) => Math.round(figure / STEP.mm)).join('/');
    kinds.set(key, [...(kinds.get(key) ?? []), joint]);
  }
  return [...kinds.values()].map((alike) => ({ joint: alike[0]!, alike }));
}

function mortisesOf(solids: Solids, joint: Joint, tenon: Tenon): readonly [a: Mortise, b: Mortise] {
  const find = (id: string) => solids.boards.get(id)!.board.mortises.find((one) => one.tenon === tenon.id)!;
  return [find(joint.a), find(joint.b)];
}

/**
 * A joint cut open twice through its first tenon, along the mortise's length and across it, with depths, fit and tenon.
 * The second board of the joint is above.
 */
export function jointDetail(solids: Solids, { joint, alike }: JointKind, options: DrawingOptions): Draft {
  const tenon = joint.tenons[0]!;
  const [a, b] = mortisesOf(solids, joint, tenon);
  const { x, y, z, origin } = tenon.place;
  const [low, high] = [-Math.max(a.depth, tenon.intoA) - ROUND, Math.max(b.depth, tenon.intoB) + ROUND];
  const windowOf = (half: number): Box => ({ minX: -half, maxX: half, minY: low, maxY: high });
  const length: Frame = { origin, x, y: z, z: scale(y, -1) };
  const across: Frame = { origin, x: y, y: z, z: x };
  const sections = [
    sectionOf(solids, length, windowOf(Math.max(a.length, b.length) / 2 + ROUND)),
    sectionOf(solids, across, windowOf(ROUND_ACROSS)),
  ] as const;
  const said = fitTable(joint, alike, tenon, [a, b], options);
  const draw = (factor: number, at: Vec2, stacked: boolean) =>
    laidOut(sections, tenon, [a, b], factor, at, stacked, options);
  for (const { name, factor } of DETAIL_SCALES) {
    for (const orientation of ['landscape', 'portrait'] as const satisfies readonly Orientation[]) {
      const page = pageOf(options.paper, orientation);
      const area = drawableOf(page);
      const stacked = orientation === 'portrait';
      const box = entitiesBox(draw(factor, [0, 0], stacked));
      const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
      const [roomX, roomY] = [area.maxX - area.minX, area.maxY - area.minY];
      // names of many joints run on in rows of their own
      const { rows, widths } = wrappedTable(said, roomX);
      const table = rows.reduce((sum, row) => sum + row.height, 0);
      const tableWidth = widths.reduce((sum, one) => sum + one, 0);
      if (width > roomX || height + GAP + table > roomY) continue;
      const at: Vec2 = [area.minX + (roomX - width) / 2 - box.minX, area.maxY - box.maxY];
      return {
        id: `joint-${joint.id.replaceAll('/', '-')}`,
        title: `joint ${joint.id}`,
        page,
        documentType: 'joint detail',
        scale: name,
        entities: [
          ...draw(factor, at, stacked),
          drawnTable([area.minX + (roomX - tableWidth) / 2, area.maxY - height - GAP], rows, widths),
        ],
        cautions: ['Fit a test joint in scrap of the same thickness before cutting the boards.'],
      };
    }
  }
  throw new RangeError(`joint ${joint.id} fits no sheet at the smallest scale`);
}

function laidOut(
  [length, across]: readonly [Section, Section],
  tenon: Tenon,
  [a, b]: readonly [Mortise, Mortise],
  factor: number,
  at: Vec2,
  stacked: boolean,
  options: DrawingOptions,
): readonly SheetEntity[] {
  const first = withDimensions(length, at, factor, options, 'section along the mortises', {
    left: [
      [-a.depth, `bottom of the mortise in ${a.face}`],
      [-tenon.intoA, 'end of the tenon'],
      [0, 'seat'],
      [tenon.intoB, 'other end of the tenon'],
      [b.depth, `bottom of the mortise in ${b.face}`],
    ],
    right: [
      [-tenon.intoA, 'end of the tenon'],
      [tenon.intoB, 'other end of the tenon'],
    ],
    above: [
      [-b.length / 2, 'end of the mortise'],
      [b.length / 2, 'other end of the mortise'],
    ],
    below: [
      [-tenon.width / 2, 'edge of the tenon'],
      [tenon.width / 2, 'other edge of the tenon'],
    ],
  });
  const second = (place: Vec2) =>
    withDimensions(across, place, factor, options, 'section across', {
      above: [
        [-b.width / 2, 'cheek of the mortise'],
        [b.width / 2, 'other cheek of the mortise'],
      ],
      below: [
        [-tenon.thickness / 2, 'face of the tenon'],
        [tenon.thickness / 2, 'other face of the tenon'],
      ],
    });
  const box = entitiesBox(first);
  const own = entitiesBox(second([0, 0]));
  const place: Vec2 = stacked ? [at[0], box.minY - GAP - own.maxY] : [box.maxX + GAP - own.minX, at[1]];
  return [...first, ...second(place)];
}

type Chains = Partial<Record<Side, readonly (readonly [value: number, what: string])[]>>;

/** A section with a chain of dimensions on some of its sides, its axis and its caption. */
function withDimensions(
  section: Section,
  at: Vec2,
  factor: number,
  { units }: DrawingOptions,
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
    const placed = stops.map(([value, what]): Stop => {
      const [x, y] = upright ? corner(0, value) : corner(value, 0);
      return { value, what, point: place.at(upright ? y : x, -1) };
    });
    return chainRow(place, 5, placed, units).dimensions;
  });
  const drawn: SheetEntity[] = [
    ...sectionEntities(section, at, factor),
    stroke('centre', corner(0, window.minY), corner(0, window.maxY)),
    ...rows,
  ];
  const names = boardNames(section, [minX, maxX], corner, drawn);
  drawn.push(...names);
  const top = entitiesBox(drawn).maxY;
  return [...drawn, letters([(minX + maxX) / 2, top + 2], caption, { anchor: 'middle', bold: true })];
}

/** The id of each board of a section, led into its wood from the left or right. */
function boardNames(
  { surfaces, window }: Section,
  [minX, maxX]: readonly [number, number],
  corner: (x: number, y: number) => Vec2,
  drawn: readonly SheetEntity[],
): readonly SheetEntity[] {
  const room = roomOf(drawn);
  const within: Box = { ...entitiesBox(drawn), minX: minX - 45, maxX: maxX + 45 };
  return surfaces
    .filter((surface) => surface.kind === 'board')
    .flatMap(({ part, region }) => {
      const box = regionBounds(region);
      const y = Math.abs(box.minY) > Math.abs(box.maxY) ? box.minY * 0.75 : box.maxY * 0.75;
      const inside = lineThrough(region, y);
      if (inside === undefined || window.maxY <= y) return [];
      return labelAt(room, corner(inside - 3, y), part, 3, { leader: 'always', within });
    });
}

/** The right end of a region at a height; undefined where there is nothing. */
function lineThrough(region: Region, y: number): number | undefined {
  const crossings = region.flatMap((loop) =>
    loop.flatMap((p, i) => {
      const q = loop[(i + 1) % loop.length]!;
      return p[1] > y === q[1] > y ? [] : [p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1])];
    }),
  );
  return crossings.length === 0 ? undefined : Math.max(...crossings);
}

function fitTable(
  joint: Joint,
  alike: readonly Joint[],
  tenon: Tenon,
  [a, b]: readonly [Mortise, Mortise],
  { units }: DrawingOptions,
): readonly (readonly string[])[] {
  const say = (mm: number) =>
    dimensionRows({ mm: Math.round(mm / STEP.mm), in: Math.round(mm / STEP.in) }, units).join(' ');
  const fine = (mm: number) => printFine(mm, { units: units === 'in' ? 'in' : 'mm' });
  const mortise = (board: string, one: Mortise) => [
    `mortise in ${board}`,
    `${say(one.width)} × ${say(one.length)}, ${say(one.depth)} deep`,
  ];
  return [
    ['what', 'size'],
    mortise(joint.a, a),
    mortise(joint.b, b),
    [
      'tenon',
      `${say(tenon.thickness)} × ${say(tenon.width)} × ${say(tenon.length)}, ${joint.tenons.length} in each joint`,
    ],
    ...mitreRows(joint, tenon, { units }),
    [
      'air',
      `${fine(joint.fit.cheek)} a cheek, ${fine(joint.fit.edge)} over both edges, ${fine(joint.fit.end)} an end`,
    ],
    ['cutter', say(joint.cutter)],
    ['joints', alike.map((one) => one.id).join(', ')],
  ];
}

const mitreRows = (
  { a, b }: Joint,
  tenon: Tenon,
  { units }: Pick<DrawingOptions, 'units'>,
): readonly (readonly string[])[] =>
  (
    [
      [a, tenon.mitreA],
      [b, tenon.mitreB],
    ] as const
  ).flatMap(([board, mitre]) => {
    if (!mitre) return [];
    const say = sayIn(units);
    return [
      [
        `its end in ${board}`,
        `mitred ${trimmed(mitre.angleDeg, 1)}° out of square, long point ${say(shortBy(tenon, mitre))} beyond the short one, a gap of ${say(mitre.gap)} to the tenon it meets`,
      ],
    ];
  });
