// Read back by the rules of the core specification (3MF Consortium, 3MF Core Specification 1.3).

import { expect, test } from 'vitest';
import type { Piece } from '../../src/files/solids/piece.js';
import { threeMf } from '../../src/files/solids/three-mf.js';
import { read3mf, readModel, unzip } from '../outside/read-3mf.js';
import { boxMesh } from './box-mesh.js';

const pieces: readonly Piece[] = [
  { id: 'a', name: 'rail <left> & "near"', colour: '#dcc9a3', mesh: boxMesh(400, 60, 20) },
  { id: 'b', name: 'tenon', colour: '#3f7f7a', mesh: boxMesh(1 / 3, 1e-4, 12_345.678901) },
  { id: 'c', name: 'far rail', colour: '#dcc9a3', mesh: boxMesh(400, 60, 20) },
];

const written = threeMf('a frame & its tenon', pieces);

test('a package is read by the rules, with names, colours and title', () => {
  const { title, objects } = read3mf(written);
  expect(title).toBe('a frame & its tenon');
  expect(objects.map(({ name }) => name)).toEqual(pieces.map(({ name }) => name));
  expect(objects.map(({ colour }) => colour.toLowerCase())).toEqual(pieces.map(({ colour }) => colour));
});

test('corners come back to a hundred-thousandth of a millimetre, also the smallest and the largest', () => {
  read3mf(written).objects.forEach(({ vertices, triangles }, i) => {
    const { mesh } = pieces[i]!;
    expect(triangles.flat()).toEqual([...mesh.triangles]);
    vertices.flat().forEach((at, j) => {
      expect(at).toBeCloseTo(mesh.positions[j]!, 5);
    });
  });
});

test('no entry carries the time it was written: the same bytes on every run', () => {
  // MS-DOS date and time of 1 January 1980, the first there is
  const first = (1 << 21) | (1 << 16);
  expect([...unzip(written).values()].map(({ time }) => time)).toEqual([first, first, first]);
  expect(threeMf('a frame & its tenon', pieces)).toEqual(written);
});

const model = unzip(written).get('3D/3dmodel.model')!.text;

test.each([
  ['a resource id of 0', 'id="1"', 'id="0"', 'a resource id'],
  ['two resources of one id', 'object id="3"', 'object id="2"', 'no two resources'],
  ['a model in no namespace', /xmlns="[^"]*"/, '', 'core namespace'],
  ['inches', 'unit="millimeter"', 'unit="inch"', 'millimetre'],
  ['a colour without its sign', 'displaycolor="#', 'displaycolor="', '#RRGGBB'],
  ['a material that is not in the list', 'pindex="1"', 'pindex="2"', 'in its list'],
  ['a triangle turned over', 'v1="3" v2="2" v3="1"', 'v1="2" v2="3" v3="1"', 'run twice'],
  ['a triangle left out', '<triangle v1="3" v2="2" v3="1"/>', '', 'its two triangles'],
  ['a corner that is not there', 'v1="3"', 'v1="8"', 'is there'],
  ['an item without its object', 'objectid="4"', 'objectid="5"', 'an object that is there'],
  ['a name that breaks the XML', '&lt;left&gt;', '<left>', 'one XML element'],
])('the reader of these tests finds %s', (_, from, to, rule) => {
  expect(readModel(model).objects).toHaveLength(3);
  const broken = model.replace(from, to);
  expect(broken).not.toBe(model);
  expect(() => readModel(broken)).toThrow(rule);
});
