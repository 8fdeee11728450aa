import { expect, test } from 'vitest';
import { OutputError } from '../../src/errors.js';
import { stl } from '../../src/files/solids/stl.js';
import { boxMesh } from './box-mesh.js';

const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

interface Facet {
  readonly normal: readonly number[];
  readonly corners: readonly (readonly number[])[];
}

/** Reads a binary file the way its published layout says: 80 bytes, a count, 50 bytes a facet, little-endian. */
function readBinary(bytes: Uint8Array): Facet[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return Array.from({ length: view.getUint32(80, true) }, (_, i) => {
    const numbers = Array.from({ length: 12 }, (_, n) => view.getFloat32(84 + 50 * i + 4 * n, true));
    return { normal: numbers.slice(0, 3), corners: [3, 6, 9].map((n) => numbers.slice(n, n + 3)) };
  });
}

/** Divergence theorem: six times the volume is the sum of the corners' triple products. */
const volume = (facets: readonly Facet[]) =>
  facets.reduce((sum, { corners }) => {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = corners.flat() as NineNumbers;
    return sum + (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
  }, 0);

type Three = [number, number, number];
type NineNumbers = [...Three, ...Three, ...Three];

test('a binary file is 84 bytes and 50 more for every triangle', () => {
  expect(stl('left-side', boxMesh(600, 90, 18), 'binary').length).toBe(84 + 50 * 12);
});

test('the header names the part and the unit', () => {
  expect(text(stl('left-side', boxMesh(600, 90, 18), 'binary').slice(0, 12))).toBe('left-side mm');
});

test('a part named solid does not make a binary file look like text', () => {
  expect(text(stl('solid-panel', boxMesh(600, 90, 18), 'binary').slice(0, 5)).toLowerCase()).not.toBe(
    'solid',
  );
});

test('a name of 200 letters leaves the triangle count in its place', () => {
  const bytes = stl('ä'.repeat(200), boxMesh(600, 90, 18), 'binary');
  expect(readBinary(bytes)).toHaveLength(12);
  expect(Math.max(...bytes.slice(0, 80))).toBeLessThan(127);
});

test('the triangles enclose the volume of the board, so they all face outward', () => {
  for (const precise of [true, false]) {
    const facets = readBinary(stl('left-side', boxMesh(600, 90, 18, precise), 'binary'));
    const surface = 2 * (600 * 90 + 600 * 18 + 90 * 18);
    // each face may stand off by what single precision leaves of 600 mm
    expect(Math.abs(volume(facets) - 600 * 90 * 18)).toBeLessThan((surface * 600) / 2 ** 24);
  }
});

test('every triangle edge is met by one edge running the other way', () => {
  const facets = readBinary(stl('left-side', boxMesh(612.3, 91.7, 18.1), 'binary'));
  const edges = new Map<string, number>();
  for (const { corners } of facets) {
    corners.forEach((from, i) => {
      const to = corners[(i + 1) % 3]!;
      const [key, back] = [`${from} > ${to}`, `${to} > ${from}`];
      edges.set(key, (edges.get(key) ?? 0) + 1);
      edges.set(back, (edges.get(back) ?? 0) - 1);
    });
  }
  expect(edges.size).toBe(36);
  expect([...edges.values()].filter((count) => count !== 0)).toEqual([]);
});

test('corners that are one in single precision are written as one, and the sliver between them goes', () => {
  const { positions, triangles } = boxMesh(600, 90, 18, true);
  const twin = positions.length / 3;
  const at = Array.from(positions);
  const [first, second] = [triangles[0]!, triangles[1]!];
  // the side between two corners gets a third, a hundred-thousandth from one of them: two triangles become four
  at.push(...[0, 1, 2].map((j) => at[3 * second + j]! + (at[3 * first + j]! - at[3 * second + j]!) * 1e-8));
  const split = [];
  for (let i = 0; i < triangles.length; i += 3) {
    const three = [triangles[i]!, triangles[i + 1]!, triangles[i + 2]!];
    const k = three.findIndex((corner, n) => {
      const next = three[(n + 1) % 3]!;
      return (corner === first && next === second) || (corner === second && next === first);
    });
    if (k < 0) split.push(...three);
    else {
      const [a, b, c] = [three[k]!, three[(k + 1) % 3]!, three[(k + 2) % 3]!];
      split.push(a, twin, c, twin, b, c);
    }
  }
  expect(split.length / 3).toBe(14);
  const mesh = { positions: Float64Array.from(at), triangles: Uint32Array.from(split) };
  expect(readBinary(stl('left-side', mesh, 'binary'))).toHaveLength(12);
});

test('the text form opens and closes with the name of the part and the unit', () => {
  const lines = text(stl('left-side', boxMesh(600, 90, 18), 'ascii'))
    .trim()
    .split('\n');
  expect(lines[0]).toBe('solid left-side mm');
  expect(lines.at(-1)).toBe('endsolid left-side mm');
  expect(lines.filter((line) => line.startsWith('facet normal'))).toHaveLength(12);
});

test('a solid without triangles is refused', () => {
  const empty = { positions: new Float64Array(), triangles: new Uint32Array() };
  expect(() => stl('rail', empty, 'binary')).toThrow(OutputError);
});

test('a corner that is not a number is refused and the part named', () => {
  const mesh = boxMesh(600, 90, 18);
  mesh.positions[4] = Number.NaN;
  expect(() => stl('rail', mesh, 'binary')).toThrow(/solid of rail .* NaN/);
});
