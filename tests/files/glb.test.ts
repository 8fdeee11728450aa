// Read back by the layout of binary glTF (Khronos Group, glTF 2.0 specification, section 4; ISO/IEC 12113).

import { expect, test } from 'vitest';
import { glb } from '../../src/files/solids/glb.js';
import type { Piece } from '../../src/files/solids/piece.js';
import { boxMesh } from './box-mesh.js';

const SIZES = [
  [400, 60, 20],
  [39, 43.2, 7.8],
] as const;

const pieces: readonly Piece[] = [
  { id: 'a', name: 'rail', colour: '#ff8000', mesh: boxMesh(...SIZES[0]) },
  { id: 'b', name: 'tenon', colour: '#3f7f7a', mesh: boxMesh(...SIZES[1]) },
];

interface Gltf {
  readonly asset: { readonly version: string };
  readonly scene: number;
  readonly scenes: readonly { readonly nodes: readonly number[] }[];
  readonly nodes: readonly {
    readonly name: string;
    readonly mesh?: number;
    readonly children?: readonly number[];
    readonly scale?: readonly number[];
    readonly rotation?: readonly number[];
  }[];
  readonly meshes: readonly {
    readonly name: string;
    readonly primitives: readonly {
      readonly attributes: Readonly<Record<string, number>>;
      readonly indices: number;
      readonly material: number;
    }[];
  }[];
  readonly accessors: readonly {
    readonly bufferView: number;
    readonly byteOffset?: number;
    readonly count: number;
    readonly componentType: number;
    readonly min?: readonly number[];
    readonly max?: readonly number[];
  }[];
  readonly bufferViews: readonly { readonly byteOffset?: number; readonly byteLength: number }[];
  readonly materials: readonly {
    readonly name: string;
    readonly pbrMetallicRoughness: { readonly baseColorFactor: readonly number[] };
  }[];
}

/** Header of 12 bytes, then a JSON chunk and a binary chunk, each with its length and type. */
function read(bytes: Uint8Array): { gltf: Gltf; binary: Buffer } {
  const file = Buffer.from(bytes);
  expect(file.toString('latin1', 0, 4)).toBe('glTF');
  expect(file.readUInt32LE(4)).toBe(2);
  expect(file.readUInt32LE(8)).toBe(file.length);
  const size = file.readUInt32LE(12);
  expect(file.toString('latin1', 16, 20)).toBe('JSON');
  expect(size % 4).toBe(0);
  const rest = 20 + size;
  expect(file.toString('latin1', rest + 4, rest + 8)).toBe('BIN\0');
  expect(rest + 8 + file.readUInt32LE(rest)).toBe(file.length);
  return { gltf: JSON.parse(file.toString('utf8', 20, rest)), binary: file.subarray(rest + 8) };
}

const { gltf, binary } = read(await glb('a frame', pieces));

test('a node and a mesh are named after each piece, under one that turns and scales', () => {
  const root = gltf.nodes[gltf.scenes[gltf.scene]!.nodes[0]!]!;
  expect(root.name).toBe('a frame');
  const children = root.children!.map((child) => gltf.nodes[child]!);
  expect(children.map(({ name }) => name)).toEqual(['rail', 'tenon']);
  expect(children.map(({ mesh }) => gltf.meshes[mesh!]!.name)).toEqual(['rail', 'tenon']);
  // a thousandth, and a quarter turn about x that brings z up to y: q = (sin −45°, 0, 0, cos −45°)
  expect(root.scale).toEqual([0.001, 0.001, 0.001]);
  const [x, y, z, w] = root.rotation as [number, number, number, number];
  expect(x).toBeCloseTo(Math.sin(-Math.PI / 4), 6);
  expect([y, z]).toEqual([0, 0]);
  expect(w).toBeCloseTo(Math.cos(-Math.PI / 4), 6);
});

test('corners and triangles come back as they are', () => {
  pieces.forEach(({ mesh }, i) => {
    const { attributes, indices } = gltf.meshes[i]!.primitives[0]!;
    const [corners, faces] = [gltf.accessors[attributes.POSITION!]!, gltf.accessors[indices]!];
    expect(corners.count).toBe(mesh.positions.length / 3);
    expect(corners.min).toEqual([0, 0, 0]);
    expect(corners.max!.map(Math.fround)).toEqual(SIZES[i]!.map(Math.fround));
    expect(faces.componentType).toBe(5123);
    const start = (gltf.bufferViews[faces.bufferView]!.byteOffset ?? 0) + (faces.byteOffset ?? 0);
    const read = Array.from({ length: faces.count }, (_, j) => binary.readUInt16LE(start + 2 * j));
    expect(read).toEqual([...mesh.triangles]);
  });
});

test('colours are linear light: #ff8000 has (128/255 + 0.055)/1.055 to the power of 2.4 of green', () => {
  const { baseColorFactor } = gltf.materials[0]!.pbrMetallicRoughness;
  // IEC 61966-2-1
  expect(baseColorFactor[0]).toBeCloseTo(1, 6);
  expect(baseColorFactor[1]).toBeCloseTo(0.215861, 5);
  expect(baseColorFactor[2]).toBeCloseTo(0, 6);
});

test('the same pieces are the same bytes', async () => {
  expect(await glb('a frame', pieces)).toEqual(await glb('a frame', pieces));
});

test('a colour is written to six decimals, short of where the powers of two engines part', () => {
  const written = gltf.materials.flatMap(({ pbrMetallicRoughness }) => pbrMetallicRoughness.baseColorFactor);
  expect(written.filter((channel) => Number(channel.toFixed(6)) !== channel)).toEqual([]);
});
