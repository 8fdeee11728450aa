type Three = readonly [x: number, y: number, z: number];

/** A triangle as it stands in the file. */
export interface Facet {
  readonly normal: Three;
  readonly corners: readonly [Three, Three, Three];
}

/** Reads a binary STL file by its published layout: 80 bytes, a count, and 12 floats and 2 bytes for each triangle. */
export function readStl(bytes: Uint8Array): readonly Facet[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const three = (at: number): Three => [
    view.getFloat32(at, true),
    view.getFloat32(at + 4, true),
    view.getFloat32(at + 8, true),
  ];
  return Array.from({ length: view.getUint32(80, true) }, (_, i) => {
    const at = 84 + 50 * i;
    return { normal: three(at), corners: [three(at + 12), three(at + 24), three(at + 36)] };
  });
}

/** What the triangles of a file tell of the surface they make; mm. */
export interface Surface {
  /** Σ v1·(v2×v3)/6. */
  readonly volume: number;
  readonly area: number;
  readonly size: Three;
  readonly corners: number;
  readonly edges: number;
  readonly triangles: number;
  /** Edges along which the triangles do not run as often one way as the other. */
  readonly openEdges: number;
  /** Facets whose written normal is not the one of their corners. */
  readonly wrongNormals: number;
}

export function surface(facets: readonly Facet[]): Surface {
  const seen = new Map<string, number>();
  const balance = new Map<string, number>();
  const numbered = facets.map(({ corners }) =>
    corners.map((corner) => {
      const key = corner.join();
      const number = seen.get(key) ?? seen.size;
      seen.set(key, number);
      return number;
    }),
  );
  for (const corners of numbered) {
    corners.forEach((from, i) => {
      const to = corners[(i + 1) % 3]!;
      const key = from < to ? `${from} ${to}` : `${to} ${from}`;
      balance.set(key, (balance.get(key) ?? 0) + (from < to ? 1 : -1));
    });
  }
  const all = facets.flatMap(({ corners }) => corners);
  const span = (axis: 0 | 1 | 2): number =>
    all.reduce((top, corner) => Math.max(top, corner[axis]), -Infinity) -
    all.reduce((low, corner) => Math.min(low, corner[axis]), Infinity);
  const crossed = facets.map(({ corners: [a, b, c] }) => cross(minus(b, a), minus(c, a)));
  return {
    volume: facets.reduce((sum, { corners: [a, b, c] }) => sum + dot(a, cross(b, c)) / 6, 0),
    area: crossed.reduce((sum, normal) => sum + Math.hypot(...normal) / 2, 0),
    size: [span(0), span(1), span(2)],
    corners: seen.size,
    edges: balance.size,
    triangles: facets.length,
    openEdges: [...balance.values()].filter((count) => count !== 0).length,
    wrongNormals: facets.filter(({ normal }, i) => {
      const size = Math.hypot(...crossed[i]!);
      // three corners in one line have no normal of their own
      return size > 0 && crossed[i]!.some((part, axis) => Math.abs(part / size - normal[axis]!) > 1e-6);
    }).length,
  };
}

const minus = (a: Three, b: Three): Three => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Three, b: Three): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Three, b: Three): Three => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
