import { type Board, entersWideFace, type Follower, type Hole, type Slot } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import type { Rule } from '../../length/index.js';
import { markOf } from '../../shop/index.js';
import { bevelFeature } from './bevel-lines.js';
import { mortiseInEdge } from './edge-marks.js';
import type { Feature } from './feature.js';
import { grooveFeature } from './groove-feature.js';
import { holeFeature } from './hole-features.js';
import { labelsInside } from './labels-inside.js';
import { lineInside } from './line-inside.js';
import { marksOffCuts } from './marks-off-cuts.js';
import { mortiseWindow, slotInEdge, slotWindow } from './pocket-features.js';
import { captions, referenceMarks } from './setting-out.js';
import { inPlane } from './strokes.js';
import type { Template } from './template.js';
import { partLines } from './template-line.js';

/** What the template is made for. */
export interface TemplateOptions extends Follower {
  /** Unit of the words; the lines are always mm. */
  readonly units: Rule;
  /** Of the design, told in the title; none where a template stands by itself. */
  readonly revision?: string;
}

/**
 * The full-size template of a board: outline and openings to cut, windows to rout, holes to drill, and marks for what a
 * template cannot guide (mortises and holes in ends and edges, both lines of every bevel).
 *
 * The template lies on the board as the board lies on the bench: reference face down, opposite face toward the person, so X
 * runs right and Y up as on the board and nothing is mirrored. The title says so.
 *
 * @throws InputError when the cutter or the guide bush cannot follow a line
 * @throws ProfileError when the outline is too small to stand off for the bush
 */
export function templateOf(board: Board, options: TemplateOptions): Template {
  const features = templateFeatures(board, options);
  const drawn = marksOffCuts([
    ...partLines(board, options),
    ...features.flatMap((feature) => feature.entities),
  ]);
  return {
    board: board.id,
    entities: [
      ...labelsInside(board, board.name, drawn),
      ...referenceMarks(board),
      ...captions(
        board,
        features.map(({ mark, row }) => `${mark}: ${row}`),
        options,
      ),
    ],
  };
}

/** What a template shows of every mortise, hole, slot, groove and bevel of a board, with the row that tells it. */
export function templateFeatures(board: Board, options: TemplateOptions): readonly Feature[] {
  const { units } = options;
  return [
    ...board.mortises.map((mortise, i) =>
      entersWideFace(mortise.face)
        ? mortiseWindow(markOf('mortise', i), mortise, options, units)
        : mortiseInEdge(markOf('mortise', i), mortise, units),
    ),
    ...board.holes.map((hole, i) => holeFeature(markOf('hole', i), hole, across(board, hole), units)),
    ...board.slots.map((slot, i) =>
      entersWideFace(slot.face)
        ? slotWindow(markOf('slot', i), slot, options, units)
        : slotInEdge(markOf('slot', i), slot, across(board, slot), units),
    ),
    ...board.grooves.map((groove, i) => grooveFeature(markOf('groove', i), groove, board, options)),
    ...board.bevels.map((bevel, i): Feature => bevelFeature(markOf('bevel', i), bevel, board)),
  ];
}

/** How much wood stands behind a place on an end or edge, straight in, mm. */
function across(board: Board, { at }: Hole | Slot): number {
  const place: Vec2 = [at.origin[0], at.origin[1]];
  const pieces = lineInside([board.outline], place, inPlane(at.z));
  return pieces.reduce((sum, [start, end]) => sum + Math.hypot(end[0] - start[0], end[1] - start[1]), 0);
}
