/**
 * The boards, tenons and assembly of a design made with the modelling library alone and written by its serializers, without
 * any checks: what `make` is measured against. It loads those libraries and nothing of this program: the design comes as data,
 * from run.mjs.
 *
 * node tests/speed/stock.mjs <design.json> <folder>
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import dxfSerializer from '@jscad/dxf-serializer';
import jscad from '@jscad/modeling';
import stlSerializer from '@jscad/stl-serializer';

const { geom2, path2 } = jscad.geometries;
const { circle, cuboid } = jscad.primitives;
const { intersect, subtract } = jscad.booleans;
const { extrudeLinear } = jscad.extrusions;
const { hull } = jscad.hulls;
const { transform, translate } = jscad.transforms;

const [file, out = 'out/stock'] = process.argv.slice(2);
const { design, apart } = JSON.parse(readFileSync(file, 'utf8'));

const boards = design.boards.map(({ board, place }) => ({ id: board.id, board, place, solid: solid(board) }));
const tenons = design.joints.flatMap((joint) =>
  joint.tenons.map((tenon) => ({
    id: tenon.id,
    place: tenon.place,
    solid: strip(tenon),
    size: sizeOf(tenon),
  })),
);
const placed = [...boards, ...tenons].map((piece) => ({
  id: piece.id,
  solid: transform(matrix(piece.place), piece.solid),
}));

write('assembly.stl', stl(placed.map((piece) => piece.solid)));
write('exploded.stl', stl(placed.map((piece) => translate(apart[piece.id], piece.solid))));
for (const { id, solid } of boards) write(`${id}.stl`, stl([solid]));
for (const [size, { solid }] of new Map(tenons.map((tenon) => [tenon.size, tenon]))) {
  write(`tenon-${size}.stl`, stl([solid]));
}
for (const { id, board } of boards) write(`${id}.dxf`, dxfSerializer.serialize({}, ...drawing(board)));
write(
  'assembly.dxf',
  dxfSerializer.serialize(
    { geom3To: '3dface' },
    placed.map((piece) => piece.solid),
  ),
);

/** The finished board: prism less openings, bevels and mortises. */
function solid(board) {
  const { thickness } = board.blank;
  const prism = extrudeLinear({ height: thickness }, geom2.fromPoints(points(board.outline)));
  const openings = board.openings.map(({ outline }) =>
    translate([0, 0, -1], extrudeLinear({ height: thickness + 2 }, geom2.fromPoints(points(outline)))),
  );
  const waste = board.bevels.map((bevel) => wasteOf(bevel, thickness));
  const pockets = board.mortises.map(({ at, length, width, depth }) =>
    transform(
      matrix(at),
      translate([0, 0, -depth], extrudeLinear({ height: depth + 1 }, slot(length, width))),
    ),
  );
  const cutters = [...openings, ...waste, ...pockets];
  return cutters.length > 0 ? subtract(prism, ...cutters) : prism;
}

/** What a bevel takes away: all beyond its plane, or the part of that over its strip. */
function wasteOf({ point, normal, within }, thickness) {
  const size = 2000;
  const aside = Math.abs(normal[1]) < 0.9 ? [0, 1, 0] : [1, 0, 0];
  const x = unit(cross(aside, normal));
  const plane = { origin: point, x, y: cross(normal, x), z: normal };
  const beyond = transform(matrix(plane), cuboid({ size: [size, size, size], center: [0, 0, size / 2] }));
  if (!within) return beyond;
  const column = extrudeLinear({ height: thickness + 2 }, geom2.fromPoints(points(within)));
  return intersect(beyond, translate([0, 0, -1], column));
}

function strip({ thickness, width, length, intoA }) {
  return translate([0, 0, -intoA], extrudeLinear({ height: length }, slot(width, thickness)));
}

function sizeOf({ thickness, width, length }) {
  return [thickness, width, length].map((size) => size.toFixed(2)).join('x');
}

function slot(length, width) {
  const radius = width / 2;
  const end = (x) => circle({ radius, center: [x, 0], segments: segments(radius) });
  return hull(end(radius - length / 2), end(length / 2 - radius));
}

/** The template as paths: outline, openings, mortises in the wide faces. */
function drawing(board) {
  const loops = [board.outline, ...board.openings.map(({ outline }) => outline)];
  const pockets = board.mortises
    .filter(({ at }) => Math.abs(at.z[2]) > 0.9)
    .map(({ at, length, width }) =>
      path2.fromPoints(
        { closed: true },
        geom2
          .toPoints(slot(length, width))
          .map(([x, y]) => [
            at.origin[0] + at.x[0] * x + at.y[0] * y,
            at.origin[1] + at.x[1] * x + at.y[1] * y,
          ]),
      ),
    );
  return [...loops.map((loop) => path2.fromPoints({ closed: true }, points(loop))), ...pockets];
}

/** An outline's vertices, with arcs (bulge = tan of a quarter of the angle) as straight pieces. */
function points(profile) {
  return profile.flatMap(({ x, y, bulge }, i) => {
    if (bulge === 0) return [[x, y]];
    const next = profile[(i + 1) % profile.length];
    const half = 2 * Math.atan(bulge);
    const [dx, dy] = [next.x - x, next.y - y];
    const towards = 1 / (2 * Math.tan(half));
    const centre = [x + dx / 2 - dy * towards, y + dy / 2 + dx * towards];
    const radius = Math.abs(Math.hypot(dx, dy) / (2 * Math.sin(half)));
    const start = Math.atan2(y - centre[1], x - centre[0]);
    const count = Math.ceil((segments(radius) * Math.abs(half)) / Math.PI);
    return Array.from({ length: count }, (_, k) => {
      const angle = start + (2 * half * k) / count;
      return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
    });
  });
}

/** Pieces in a full circle that stay within 0.005 mm of it, as `make` has them. */
function segments(radius) {
  return 4 * Math.ceil(Math.PI / Math.acos(1 - 0.005 / radius) / 4);
}

function matrix({ origin, x, y, z }) {
  return [...x, 0, ...y, 0, ...z, 0, ...origin, 1];
}

function cross(a, b) {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit(a) {
  const size = Math.hypot(...a);
  return a.map((part) => part / size);
}

function stl(solids) {
  return stlSerializer.serialize({ binary: true }, ...solids);
}

function write(file, parts) {
  mkdirSync(out, { recursive: true });
  writeFileSync(join(out, file), Buffer.concat(parts.map((part) => Buffer.from(part))));
}
