import { type Box3, BufferGeometry, Float32BufferAttribute, LineBasicMaterial, LineSegments } from 'three';

/** Between the floor's lines, mm. */
const STEP = 100;

/** Lines on the floor, 100 mm apart, under a piece and a little round it. */
export function floorGrid({ min, max }: Box3): LineSegments<BufferGeometry, LineBasicMaterial> {
  const from = [min.x, min.y].map((at) => STEP * (Math.floor(at / STEP) - 1)) as [number, number];
  const to = [max.x, max.y].map((at) => STEP * (Math.ceil(at / STEP) + 1)) as [number, number];
  // a hair lower, so that the underside of a board stays clear of it
  const z = min.z - 0.3;
  const ends: number[] = [];
  for (let x = from[0]; x <= to[0]; x += STEP) ends.push(x, from[1], z, x, to[1], z);
  for (let y = from[1]; y <= to[1]; y += STEP) ends.push(from[0], y, z, to[0], y, z);
  const lines = new BufferGeometry().setAttribute('position', new Float32BufferAttribute(ends, 3));
  return new LineSegments(lines, new LineBasicMaterial());
}
