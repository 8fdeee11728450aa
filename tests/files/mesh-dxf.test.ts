import { expect, test } from 'vitest';
import { OutputError } from '../../src/errors.js';
import { meshDxf } from '../../src/files/solids/mesh-dxf.js';
import { boxMesh } from './box-mesh.js';
import { parseDxf } from './parse-dxf.js';

interface Face {
  readonly type: string;
  readonly layer: string;
  readonly handle: string;
  readonly vertices: readonly { x: number; y: number; z: number }[];
}

const read = (bytes: Uint8Array) => {
  const drawing = parseDxf(bytes);
  return {
    header: drawing.header,
    layers: Object.keys(drawing.tables.layer.layers),
    faces: drawing.entities as unknown as Face[],
  };
};

const pieces = [
  { name: 'left-side', mesh: boxMesh(600, 90, 18) },
  { name: 'rail', mesh: boxMesh(2400, 120, 30) },
];

test('the faces of two boards stand each on the layer of its board', () => {
  const { faces, layers } = read(meshDxf(pieces));
  expect(layers).toEqual(expect.arrayContaining(['left-side', 'rail']));
  expect(faces.filter((face) => face.layer === 'left-side')).toHaveLength(12);
  expect(faces.filter((face) => face.layer === 'rail')).toHaveLength(12);
  expect(new Set(faces.map((face) => face.type))).toEqual(new Set(['3DFACE']));
});

test('no two faces share a handle', () => {
  const { faces } = read(meshDxf(pieces));
  expect(new Set(faces.map((face) => face.handle)).size).toBe(24);
});

test('the file says millimetres and a 2400 mm rail measures 2400 mm', () => {
  const { header, faces } = read(meshDxf(pieces));
  expect(header.$INSUNITS).toBe(4);
  const reach = Math.max(
    ...faces
      .filter((face) => face.layer === 'rail')
      .flatMap((face) => face.vertices.slice(0, 3).map((at) => at.x)),
  );
  expect(Math.abs(reach - 2400)).toBeLessThan(1e-6);
});

test('a design without boards is refused', () => {
  expect(() => meshDxf([])).toThrow(OutputError);
});
