import type { PlacedBoard } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { frame, type Vec3 } from '../../src/frame/index.js';

const AXES: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/**
 * A square-edged board by the box it fills, its grain along an axis of the assembly, its thickness the smaller side.
 *
 * @param grain 0, 1 or 2: along x, y or z
 */
export function block(id: string, least: Vec3, most: Vec3, grain: 0 | 1 | 2): PlacedBoard {
  const size = most.map((at, i) => at - least[i]!);
  const [second, third] = [(grain + 1) % 3, (grain + 2) % 3];
  const upright = size[second]! >= size[third]!;
  const [width, thickness] = upright ? [second, third] : [third, second];
  // z × x points along the width, or against it
  const origin = least.map((at, i) => (!upright && i === width ? most[i]! : at)) as unknown as Vec3;
  const blank = { length: size[grain]!, width: size[width]!, thickness: size[thickness]! };
  return {
    board: makeBoard({ id, material: 'white ash', blank }),
    place: frame(origin, AXES[thickness]!, AXES[grain]!),
  };
}
