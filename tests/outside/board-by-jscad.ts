import jscad from '@jscad/modeling';
import type { Bevel, Board, Hole, Mortise, Slot } from '../../src/board/index.js';
import { type Frame, frame } from '../../src/frame/index.js';
import { circle, counterClockwise, obround, type Profile, tessellate } from '../../src/profile/index.js';
import { CUTTER_LEAD } from '../../src/tolerances.js';

const { intersect, subtract } = jscad.booleans;
const { extrudeLinear } = jscad.extrusions;
const { cuboid, polygon, polyhedron } = jscad.primitives;
const { transform, translateZ } = jscad.transforms;

type Geom3 = ReturnType<typeof cuboid>;

/** A finished board made by the second engine from the board's data; only the facets of arcs are ours. */
export function boardByJscad(board: Board): Geom3 {
  const { thickness } = board.blank;
  return subtract(
    prism(board.outline, 0, thickness),
    ...board.openings.map(({ outline }) => prism(outline, -CUTTER_LEAD, thickness + CUTTER_LEAD)),
    ...board.bevels.map((bevel) => bevelWaste(board, bevel)),
    ...board.mortises.map(pocket),
    ...board.slots.map((slot) => trench(board, slot)),
    ...board.holes.flatMap((hole) => bores(board, hole)),
  );
}

/** mm³ */
export const jscadVolume = (body: Geom3): number => jscad.measurements.measureVolume(body);

const points = (outline: Profile): [number, number][] =>
  tessellate(counterClockwise(outline)).map(([x, y]) => [x, y]);

function prism(outline: Profile, from: number, to: number, place?: Frame): Geom3 {
  const upright = extrudeLinear({ height: to - from }, polygon({ points: points(outline) }));
  return placed(translateZ(from, upright), place);
}

const placed = (body: Geom3, at?: Frame): Geom3 =>
  at ? transform([...at.x, 0, ...at.y, 0, ...at.z, 0, ...at.origin, 1], body) : body;

/** Longer than any way through the board. */
const reach = ({ blank }: Board): number => 4 * (blank.length + blank.width + blank.thickness);

/** The wood on the side a bevel's normal points to: a cuboid for a half-space, in the column over `within`. */
function bevelWaste(board: Board, { point, normal, within }: Bevel): Geom3 {
  const size = reach(board);
  const across = Math.abs(normal[0]) < 0.9 ? ([1, 0, 0] as const) : ([0, 1, 0] as const);
  const half = placed(
    cuboid({ size: [size, size, size], center: [0, 0, size / 2] }),
    frame(point, normal, across),
  );
  return within ? intersect(half, prism(within, -CUTTER_LEAD, board.blank.thickness + CUTTER_LEAD)) : half;
}

const pocket = ({ length, width, depth, at }: Mortise): Geom3 =>
  prism(obround({ length, width }), -depth, CUTTER_LEAD, at);

function trench(board: Board, { length, width, depth, at, openAt }: Slot): Geom3 {
  const extra = openAt === undefined ? 0 : reach(board);
  const towards = openAt === 'start' ? -1 : 1;
  const outline = obround({ length: length + extra, width, centre: [(towards * extra) / 2, 0] });
  return prism(outline, depth === 'through' ? -reach(board) : -depth, CUTTER_LEAD, at);
}

function bores(board: Board, { diameter, depth, counterbore, countersink, at }: Hole): Geom3[] {
  const bore = (of: number, deep: number) => prism(circle({ diameter: of }), -deep, CUTTER_LEAD, at);
  return [
    bore(diameter, depth === 'through' ? reach(board) : depth),
    ...(counterbore ? [bore(counterbore.diameter, counterbore.depth)] : []),
    ...(countersink ? [cone(diameter, countersink.diameter, countersink.angleDeg, at)] : []),
  ];
}

/** A countersink: its sides run on past the face it is cut from. */
function cone(narrow: number, wide: number, angleDeg: number, at: Frame): Geom3 {
  const slope = Math.tan((angleDeg * Math.PI) / 360);
  const ring = points(circle({ diameter: narrow }));
  const deep = (wide - narrow) / 2 / slope;
  const grown = (wide + 2 * CUTTER_LEAD * slope) / narrow;
  const n = ring.length;
  return placed(
    polyhedron({
      points: [
        ...ring.map(([x, y]): [number, number, number] => [x, y, -deep]),
        ...ring.map(([x, y]): [number, number, number] => [x * grown, y * grown, CUTTER_LEAD]),
      ],
      faces: [
        ring.map((_, i) => n - 1 - i),
        ring.map((_, i) => n + i),
        ...ring.map((_, i) => [i, (i + 1) % n, n + ((i + 1) % n), n + i]),
      ],
      orientation: 'outward',
    }),
    at,
  );
}
