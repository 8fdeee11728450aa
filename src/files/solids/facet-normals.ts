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
  for (let at = START; at + FACET <= bytes.length; at += FACET) {
    const corners = Array.from({ length: 9 }, (_, i) => view.getFloat32(at + CORNERS + 4 * i, true));
    normalOf(corners).forEach((part, i) => {
      view.setFloat32(at + 4 * i, part, true);
    });
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
function normalOf(corners: readonly number[]): readonly number[] {
  const [ax, ay, az, bx, by, bz, cx, cy, cz] = corners as Nine;
  const [ux, uy, uz] = [bx - ax, by - ay, bz - az];
  const [vx, vy, vz] = [cx - ax, cy - ay, cz - az];
  const normal = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const size = Math.hypot(...normal);
  // + 0 keeps -0 out of the text
  return normal.map((part) => (size > 0 ? part / size + 0 : 0));
}

type Nine = [number, number, number, number, number, number, number, number, number];
