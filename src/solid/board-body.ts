import {
  type Board,
  columnRegion,
  type Groove,
  grooveOutline,
  type Hole,
  type Mortise,
  mouthOf,
  type Slot,
} from '../board/index.js';
import { dot, type Vec3 } from '../frame/index.js';
import { circle, obround, regionOf } from '../profile/index.js';
import { CUTTER_LEAD } from '../tolerances.js';
import { type Body, type Kernel, prism } from './kernel.js';

/** The board before any joint, hole or slot is cut: blank, outline, openings, bevels. Board frame. The caller owns it. */
export function stockBody(kernel: Kernel, board: Board): Body {
  const thickness = board.blank.thickness;
  let body = prism(kernel, columnRegion(board), 0, thickness, undefined);
  for (const bevel of board.bevels) {
    const offset = dot(bevel.normal, bevel.point);
    const normal: [number, number, number] = [...bevel.normal];
    const before = body;
    if (bevel.within) {
      const column = prism(kernel, regionOf(bevel.within), -CUTTER_LEAD, thickness + CUTTER_LEAD, undefined);
      const waste = column.trimByPlane(normal, offset);
      body = before.subtract(waste);
      column.delete();
      waste.delete();
    } else {
      body = before.trimByPlane([-normal[0], -normal[1], -normal[2]], -offset);
    }
    before.delete();
  }
  return body;
}

/** The finished board: the stock less every mortise, hole, slot and groove. Board frame. The caller owns it. */
export function boardBody(kernel: Kernel, board: Board, stock: Body): Body {
  const cutters = featureCutters(kernel, board);
  if (cutters.length === 0) return stock.translate([0, 0, 0]);
  const body = kernel.wasm.Manifold.difference([stock, ...cutters]);
  for (const cutter of cutters) cutter.delete();
  return body;
}

/** What the cutters sweep, a little beyond the face they enter. */
function featureCutters(kernel: Kernel, board: Board): Body[] {
  return [
    ...board.mortises.map((mortise) => mortiseCutter(kernel, mortise, 0)),
    ...board.holes.flatMap((hole) => holeCutters(kernel, board, hole, 0)),
    ...board.slots.map((slot) => slotCutter(kernel, board, slot, 0)),
    ...board.grooves.map((groove) => grooveCutter(kernel, board, groove)),
  ];
}

/** The obround a mortise's cutter sweeps, grown by `margin` all round and below, up to `top` above its face. The caller owns it. */
export function mortiseCutter(kernel: Kernel, mortise: Mortise, margin: number, top = CUTTER_LEAD): Body {
  const outline = regionOf(
    obround({ length: mortise.length + 2 * margin, width: mortise.width + 2 * margin }),
  );
  if (!mortise.faceNormal) return prism(kernel, outline, -mortise.depth - margin, top, mortise.at);
  // an oblique mouth: long enough for its long point, then cut off along the face
  const { drop, normal } = mouthOf(mortise);
  const long = prism(kernel, outline, -mortise.depth - margin, 2 * (drop + margin + CUTTER_LEAD), mortise.at);
  const cutter = belowFace(long, mortise.at.origin, normal, top);
  long.delete();
  return cutter;
}

/** What of a body lies below a plane `height` above a face. The caller owns it. */
export const belowFace = (body: Body, onFace: Vec3, normal: Vec3, height: number): Body =>
  body.trimByPlane([-normal[0], -normal[1], -normal[2]], -dot(normal, onFace) - height);

/** What a slot's cutter sweeps, grown by `margin` all round; an open end runs out past the blank. The caller owns it. */
export function slotCutter(kernel: Kernel, board: Board, slot: Slot, margin: number): Body {
  const beyond = throughDepth(board);
  const depth = slot.depth === 'through' ? beyond : slot.depth;
  const towards = slot.openAt === 'end' ? 1 : -1;
  const outline = obround({
    length: slot.length + 2 * margin + (slot.openAt ? beyond : 0),
    width: slot.width + 2 * margin,
    centre: [slot.openAt ? (towards * beyond) / 2 : 0, 0],
  });
  return prism(kernel, regionOf(outline), -depth - margin, CUTTER_LEAD, slot.at);
}

/** What a groove's cutter sweeps; its open ends run out past the blank. The caller owns it. */
export const grooveCutter = (kernel: Kernel, board: Board, groove: Groove): Body =>
  prism(kernel, regionOf(grooveOutline(groove, throughDepth(board))), -groove.depth, CUTTER_LEAD, groove.at);

/** What drill, counterbore and countersink sweep, grown by `margin`. The caller owns them. */
export function holeCutters(kernel: Kernel, board: Board, hole: Hole, margin: number): Body[] {
  const sunk = (diameter: number, depth: number) =>
    prism(
      kernel,
      regionOf(circle({ diameter: diameter + 2 * margin })),
      -depth - margin,
      CUTTER_LEAD,
      hole.at,
    );
  const bodies = [sunk(hole.diameter, hole.depth === 'through' ? throughDepth(board) : hole.depth)];
  if (hole.counterbore) bodies.push(sunk(hole.counterbore.diameter, hole.counterbore.depth));
  if (hole.countersink) bodies.push(cone(kernel, hole, hole.countersink, margin));
  return bodies;
}

/** A countersink, from the hole's diameter up past the face. */
function cone(
  kernel: Kernel,
  hole: Hole,
  sink: { readonly diameter: number; readonly angleDeg: number },
  margin: number,
): Body {
  const slope = Math.tan((sink.angleDeg * Math.PI) / 360);
  const depth = (sink.diameter - hole.diameter) / 2 / slope;
  const narrow = hole.diameter + 2 * margin;
  const mouth = sink.diameter + 2 * margin + 2 * CUTTER_LEAD * slope;
  const outline = regionOf(circle({ diameter: narrow }));
  return prism(kernel, outline, -depth, CUTTER_LEAD, hole.at, mouth / narrow);
}

/** Deep enough to leave the board from any face. */
const throughDepth = (board: Board): number =>
  Math.hypot(board.blank.length, board.blank.width, board.blank.thickness) + CUTTER_LEAD;
