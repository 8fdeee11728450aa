// Files for others, read by others: 3MF by the rules of its specification, 3MF and GLB by assimp, STL by a viewer.

import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { CASES, type Case, type Made, workshop } from './designs.js';
import { ASSIMP, F3D, printed, testWith } from './programs.js';
import { read3mf } from './read-3mf.js';
import { readPng } from './read-png.js';
import { type Facet, readStl } from './read-stl.js';

const made = workshop();

const filesOf = (of: Case): Promise<Made> => made(of, { only: ['stl', '3mf', 'glb'] });

const file = ({ folder }: Made, below: string): string => path.join(folder, below);

/** Every piece by the name it has in the files, in their order. */
const namesOf = ({ design }: Made): readonly string[] => [
  ...design.boards.map(({ board }) => board.name),
  ...design.joints.flatMap(({ tenons }) => tenons.map(({ id }) => `tenon ${id}`)),
  ...design.hardware.map(({ id, name }) => `${id.replaceAll('-', ' ')}: ${name}`),
];

const assemblyOf = (of: Made): readonly Facet[] => readStl(readFileSync(file(of, 'stl/assembly.mm.stl')));

/** What assimp tells of a file. */
function look(where: string) {
  const report = printed(ASSIMP, 'info', where);
  const point = (row: string): readonly number[] =>
    new RegExp(`${row} point +\\(([^)]*)\\)`).exec(report)![1]!.split(' ').map(Number);
  return {
    meshes: Number(/^Meshes: +(\d+)/m.exec(report)![1]),
    faces: Number(/^Faces: +(\d+)/m.exec(report)![1]),
    kinds: /^Primitive Types: +(.*)$/m.exec(report)![1]!.trim(),
    min: point('Minimum'),
    max: point('Maximum'),
    names: [...report.matchAll(/^ +\d+ \((.*)\): \[\d+ \/ \d+ \/ \d+/gm)].map(([, name]) => name!),
  };
}

/** Bounds of triangles, mm. */
function bounds(facets: readonly Facet[]): {
  readonly min: readonly number[];
  readonly max: readonly number[];
} {
  const corners = facets.flatMap((facet) => facet.corners);
  const end = (pick: (one: number, other: number) => number) =>
    [0, 1, 2].map((i) => corners.map((corner) => corner[i]!).reduce((one, other) => pick(one, other)));
  return { min: end(Math.min), max: end(Math.max) };
}

/** STL files put corners on a grid; 3MF keeps a hundred-thousandth and glTF single precision. */
const GRID = 0.01;

function near(found: readonly number[], expected: readonly number[], within: number): void {
  found.forEach((at, i) => {
    expect(Math.abs(at - expected[i]!)).toBeLessThan(within);
  });
}

/** The jig, the frame, the usual stool, and one of two treads raked as far as it goes. */
const EXCHANGED = CASES.filter(
  ({ values }) =>
    Object.keys(values).length === 0 ||
    `${values.treads}/${values.rake}` === '1/10' ||
    `${values.treads}/${values.rake}` === '2/20',
);

for (const of of EXCHANGED) {
  test(`the 3MF file of the ${of.called} keeps every rule, and holds each piece by name with the STL's triangles`, async () => {
    const result = await filesOf(of);
    const { title, objects } = read3mf(readFileSync(file(result, 'exchange/assembly.3mf')));
    expect(title).toBe(result.design.title);
    expect(objects.map(({ name }) => name)).toEqual(namesOf(result));
    const triangles = objects.reduce((sum, object) => sum + object.triangles.length, 0);
    expect(triangles).toBe(assemblyOf(result).length);
  });
}

for (const of of [CASES[0]!, CASES.at(-1)!]) {
  testWith(ASSIMP, `assimp reads the ${of.called} from 3MF in millimetres, Z up`, async () => {
    const result = await filesOf(of);
    const facets = assemblyOf(result);
    const read = look(file(result, 'exchange/assembly.3mf'));
    expect(read.meshes).toBe(namesOf(result).length);
    expect(read.faces).toBe(facets.length);
    expect(read.kinds).toBe('triangles');
    const { min, max } = bounds(facets);
    near(read.min, min, GRID);
    near(read.max, max, GRID);
  });

  testWith(
    ASSIMP,
    `assimp reads the ${of.called} from GLB in metres, Y up, each mesh by its name`,
    async () => {
      const result = await filesOf(of);
      const facets = assemblyOf(result);
      const read = look(file(result, 'exchange/assembly.glb'));
      expect(read.names).toEqual(namesOf(result));
      expect(read.faces).toBe(facets.length);
      expect(read.kinds).toBe('triangles');
      // x stays, height is y, and what is away from the person is −z
      const { min, max } = bounds(facets);
      near(read.min, [min[0]! / 1000, min[2]! / 1000, -max[1]! / 1000], GRID / 1000);
      near(read.max, [max[0]! / 1000, max[2]! / 1000, -min[1]! / 1000], GRID / 1000);
    },
  );
}

testWith(
  F3D,
  'a viewer shows the stool from its STL file: wood in the middle, nothing in the corners',
  async () => {
    const result = await filesOf(CASES.at(-1)!);
    const folder = mkdtempSync(path.join(tmpdir(), 'tenonwright-shown-'));
    try {
      const picture = path.join(folder, 'stool.png');
      printed(
        F3D,
        file(result, 'stl/assembly.mm.stl'),
        '--up=+Z',
        '--resolution=200,150',
        `--output=${picture}`,
      );
      const { width, height, pixel, count } = readPng(readFileSync(picture));
      const ground = pixel(0, 0);
      for (const [x, y] of [
        [width - 1, 0],
        [0, height - 1],
        [width - 1, height - 1],
      ] as const) {
        expect(pixel(x, y)).toEqual(ground);
      }
      const shown = count((one) => one.some((channel, i) => Math.abs(channel - ground[i]!) > 12));
      expect(shown / (width * height)).toBeGreaterThan(0.1);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
);
