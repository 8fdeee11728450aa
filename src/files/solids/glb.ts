import { Document, WebIO } from '@gltf-transform/core';
import type { Piece } from './piece.js';

/** Half the square root of two: a quarter turn as a quaternion. */
const QUARTER = Math.SQRT1_2;

/** Fewer corners than this are indexed with two bytes. */
const SHORT_INDEX = 65_535;

/**
 * An assembly as binary glTF 2.0 (Khronos Group; ISO/IEC 12113), a node, mesh and material named after each piece.
 *
 * glTF is in metres with Y up and linear colour: one root node scales and turns, colours are converted. No normals are
 * written, so viewers shade the facets flat.
 */
export async function glb(title: string, pieces: readonly Piece[]): Promise<Uint8Array> {
  const document = new Document();
  document.getRoot().getAsset().generator = 'tenonwright';
  const buffer = document.createBuffer();
  const root = document
    .createNode(title)
    .setScale([0.001, 0.001, 0.001])
    .setRotation([-QUARTER, 0, 0, QUARTER]);
  for (const piece of pieces) {
    const [red, green, blue] = linear(piece.colour);
    const material = document
      .createMaterial(piece.name)
      .setBaseColorFactor([red, green, blue, 1])
      .setMetallicFactor(0)
      .setRoughnessFactor(0.8);
    const positions = document
      .createAccessor()
      .setType('VEC3')
      .setArray(Float32Array.from(piece.mesh.positions))
      .setBuffer(buffer);
    const corners = piece.mesh.positions.length / 3;
    const indices = document
      .createAccessor()
      .setType('SCALAR')
      .setArray(
        corners < SHORT_INDEX
          ? Uint16Array.from(piece.mesh.triangles)
          : Uint32Array.from(piece.mesh.triangles),
      )
      .setBuffer(buffer);
    const surface = document
      .createPrimitive()
      .setAttribute('POSITION', positions)
      .setIndices(indices)
      .setMaterial(material);
    const mesh = document.createMesh(piece.name).addPrimitive(surface);
    root.addChild(document.createNode(piece.name).setMesh(mesh));
  }
  // a reader need not show a scene that is not the default one
  document.getRoot().setDefaultScene(document.createScene(title).addChild(root));
  return new WebIO().writeBinary(document);
}

/** Decimals of a colour: far finer than its 256 steps, and coarser than where engines' powers differ. */
const COLOUR_DECIMALS = 6;

/** sRGB to linear light (IEC 61966-2-1), rounded. */
function linear(colour: string): [number, number, number] {
  const channel = (at: number): number => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    const light = share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    return Number(light.toFixed(COLOUR_DECIMALS));
  };
  return [channel(1), channel(3), channel(5)];
}
