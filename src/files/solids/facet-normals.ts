import type { Vec3 } from '../../frame/index.js';

/** Bytes before the first facet of a binary file, of one facet, and where its first corner starts. */
const [START, FACET, CORNERS] = [84, 50, 12];

/**
 * Sets the normal of every facet of a binary STL file to the one its written corners have.
 *
 * The serializer works normals out before it rounds corners to single precision; on a sliver some thousandths of a
 * millimetre wide that turns the normal by up to a degree (measured: 0.7), and a reader finds it wrong.
 *
 * @param bytes changed in place
 */
export function correctNormals(bytes: Uint8Array): void {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const corners = new Float64Array(9);
  for (let at = START; at + FACET <= bytes.length; at += FACET) {
    for (let i = 0; i < 9; i += 1) corners[i] = view.getFloat32(at + CORNERS + 4 * i, true);
    const normal = normalOf(corners);
    for (let i = 0; i < 3; i += 1) view.setFloat32(at + 4 * i, normal[i]!, true);
  }
}

/** Text of an ascii STL file with every normal worked out again from its corners. */
export const withCorrectNormals = (text: string): string =>
  text.replace(
    /^facet normal .*(\nouter loop\nvertex (.*)\nvertex (.*)\nvertex (.*)\n)/gm,
    (_, loop: string, ...corners: string[]) => {
      const numbers = corners.slice(0, 3).flatMap((corner) => corner.split(' ').map(Number));
      return `facet normal ${normalOf(numbers.map(Math.fround)).join(' ')}${loop}`;
    },
  );

/** Unit normal by the right-hand rule; nothing in every direction for corners in one line, as the format allows. */
function normalOf(corners: ArrayLike<number>): Vec3 {
  const along = (corner: number, axis: number): number => corners[3 * corner + axis]! - corners[axis]!;
  const [ux, uy, uz, vx, vy, vz] = [
    along(1, 0),
    along(1, 1),
    along(1, 2),
    along(2, 0),
    along(2, 1),
    along(2, 2),
  ];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const size = Math.hypot(x, y, z);
  // + 0 keeps -0 out of the text
  return size > 0 ? [x / size + 0, y / size + 0, z / size + 0] : [0, 0, 0];
}
