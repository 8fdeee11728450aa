import type { Board, FaceId } from '../../src/board/index.js';
import { frame, scale, type Vec3 } from '../../src/frame/index.js';
import { rectangle, regionArea, regionOf, subtractRegion } from '../../src/profile/index.js';
import type { WorkStep } from '../../src/shop/index.js';
import {
  type Body,
  holeCutters,
  type Kernel,
  mortiseCutter,
  prism,
  section,
  slotCutter,
} from '../../src/solid/index.js';
import { planeOf } from './card-reader.js';

/** Faces are looked at this far inside and outside their plane, mm. */
const SKIN = 0.01;

/** A face worth working from is larger than what a saw cut's edge leaves in a slice, mm². */
const LEAST_FACE = 100;

/** Wood enough to hold every cut, mm. */
const FAR = 5000;

/** Does one step of the work to a body, by what the step says and nothing else. */
export function cut(kernel: Kernel, body: Body | undefined, step: WorkStep, board: Board): Body {
  const { keep } = kernel;
  const figure = (name: string) => step.figures.find((one) => one.name === name)?.value;
  if (step.kind === 'mill') {
    const before = figure('horn beyond the reference end') ?? 0;
    const after = figure('horn beyond the opposite end') ?? 0;
    const length = (figure('length') ?? figure('length without horns'))! + before + after;
    const outline = rectangle({ x: -before, y: 0, length, width: figure('width')! });
    return keep(prism(kernel, regionOf(outline), 0, figure('thickness')!, undefined));
  }
  const wood = body!;
  const less = (waste: readonly Body[]): Body =>
    keep(waste.reduce((left, one) => keep(left.subtract(keep(one))), wood));
  switch (step.kind) {
    case 'trim horn':
    case 'cut ends':
      return step.makes.reduce((left, id) => {
        const { normal, point } = planeOf(board, id);
        const inwards: [number, number, number] = [-normal[0], -normal[1], -normal[2]];
        return keep(
          left.trimByPlane(
            inwards,
            inwards.reduce((sum, part, i) => sum + part * point[i]!, 0),
          ),
        );
      }, wood);
    case 'outline':
      return keep(wood.intersect(keep(prism(kernel, regionOf(board.outline), -FAR, FAR, undefined))));
    case 'bevel':
      return less(
        step.cuts.map((id) => {
          const bevel = board.bevels.find((one) => one.id === id)!;
          const column = keep(
            prism(kernel, regionOf(bevel.within!), -1, board.blank.thickness + 1, undefined),
          );
          const offset = bevel.normal.reduce((sum, part, i) => sum + part * bevel.point[i]!, 0);
          return column.trimByPlane([...bevel.normal], offset);
        }),
      );
    case 'opening':
      return less(
        step.cuts.map((id) => {
          const { outline } = board.openings.find((one) => one.id === id)!;
          return prism(kernel, regionOf(outline), -1, board.blank.thickness + 1, undefined);
        }),
      );
    case 'mortise':
      return less(
        step.cuts.map((id) => mortiseCutter(kernel, board.mortises.find((one) => one.id === id)!, 0)),
      );
    case 'hole':
      return less(
        step.cuts.flatMap((id) => holeCutters(kernel, board, board.holes.find((one) => one.id === id)!, 0)),
      );
    case 'slot':
      return less(
        step.cuts.map((id) => slotCutter(kernel, board, board.slots.find((one) => one.id === id)!, 0)),
      );
    default:
      return wood;
  }
}

/** Flat wood that ends in the plane of a named face of the board, mm²: what a fence, a rail or a rule finds there. */
export function flatArea(body: Body, board: Board, id: FaceId): number {
  const { normal, point } = planeOf(board, id);
  const at = (out: number) => {
    const origin = point.map((part, i) => part + normal[i]! * out) as unknown as Vec3;
    return section(body, frame(origin, normal, acrossOf(normal)));
  };
  return regionArea(subtractRegion(at(-SKIN), at(SKIN)));
}

export const isThere = (body: Body, board: Board, id: FaceId): boolean =>
  flatArea(body, board, id) > LEAST_FACE;

const acrossOf = (normal: Vec3): Vec3 =>
  Math.abs(normal[2]) > 0.9 ? [1, 0, 0] : scale([-normal[1], normal[0], 0], 1);

/** Wood that only one of two bodies has, mm³. */
export function difference(a: Body, b: Body): number {
  const more = a.subtract(b);
  // what only the other one has follows from the volumes
  const size = 2 * more.volume() - a.volume() + b.volume();
  more.delete();
  return size;
}
