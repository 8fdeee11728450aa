import { Vector3 } from 'three';

/** A piece of a sharp edge, and which of its ends is a corner of the piece: on a round, edges only go on. */
export interface SharpEdge {
  readonly from: Vector3;
  readonly to: Vector3;
  readonly fromCorner: boolean;
  readonly toCorner: boolean;
}

/** Edges that meet at less than this go on one in the other: cos 20°. */
const GOES_ON = Math.cos((20 * Math.PI) / 180);

/**
 * @param positions corner i at 3i, mm
 * @param ends numbers of corners, in pairs
 */
export function sharpEdgesOf(positions: Float32Array, ends: ArrayLike<number>): readonly SharpEdge[] {
  const at = (i: number): Vector3 => new Vector3().fromArray(positions, 3 * i);
  const ways = new Map<number, Vector3[]>();
  for (let i = 0; i < ends.length; i += 2) {
    const along = at(ends[i + 1]!)
      .sub(at(ends[i]!))
      .normalize();
    for (const [end, way] of [
      [ends[i]!, along],
      [ends[i + 1]!, along.clone().negate()],
    ] as const) {
      const known = ways.get(end);
      if (known) known.push(way);
      else ways.set(end, [way]);
    }
  }
  const isCorner = (end: number): boolean => {
    const [one, other, ...more] = ways.get(end)!;
    return more.length > 0 || !one || !other || one.dot(other) > -GOES_ON;
  };
  const corner = new Map([...ways.keys()].map((end) => [end, isCorner(end)]));
  return Array.from({ length: ends.length / 2 }, (_, i) => {
    const [from, to] = [ends[2 * i]!, ends[2 * i + 1]!];
    return { from: at(from), to: at(to), fromCorner: corner.get(from)!, toCorner: corner.get(to)! };
  });
}
