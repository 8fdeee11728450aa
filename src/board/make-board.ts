import { BoardError } from '../errors.js';
import { bounds, type Profile, rectangle } from '../profile/index.js';
import { SAME_POINT } from '../tolerances.js';
import type { Bevel, Blank, Board, Groove, Hole, Opening, Slot } from './board.js';
import { isFileName } from './file-name.js';

/** What is needed to make a board; the outline defaults to the whole blank. */
export interface BoardSpec {
  readonly id: string;
  readonly name?: string;
  readonly material?: string;
  readonly blank: Blank;
  readonly outline?: Profile;
  readonly bevels?: readonly Bevel[];
  readonly openings?: readonly Opening[];
  readonly holes?: readonly Hole[];
  readonly slots?: readonly Slot[];
  readonly grooves?: readonly Groove[];
}

/**
 * A board from its sizes (mm), with no mortise yet: joints cut those.
 *
 * @throws BoardError when no file can be named after it, a size is not a positive number, or the outline leaves the blank
 * @example makeBoard({ id: 'tread', blank: { length: 400, width: 250, thickness: 28 } })
 */
export function makeBoard(spec: BoardSpec): Board {
  const { id, blank } = spec;
  if (!isFileName(id))
    throw new BoardError(
      'board-id',
      `a board is called ${JSON.stringify(id)}, and its files are named after it: use letters, digits and dashes, and no name Windows keeps for a device, like con or aux`,
    );
  for (const [side, size] of Object.entries(blank)) {
    if (!(Number.isFinite(size) && size > 0)) {
      throw new BoardError(
        'blank-size',
        (say) =>
          `board ${id}: its blank has a ${side} of ${Number.isFinite(size) ? say.fine(size) : size}; it must be more than 0: change the dimension it comes from`,
      );
    }
  }
  const outline = spec.outline ?? rectangle({ length: blank.length, width: blank.width });
  const box = bounds(outline);
  const out = Math.max(-box.minX, -box.minY, box.maxX - blank.length, box.maxY - blank.width);
  if (out > SAME_POINT) {
    throw new BoardError(
      'outline-off-blank',
      (say) =>
        `board ${id}: its outline leaves the blank, ${say.length(blank.length)} long and ${say.length(blank.width)} wide, by ${say.fine(out)}: enlarge the blank or move the outline`,
    );
  }
  return {
    id,
    name: spec.name ?? id.replaceAll('-', ' '),
    material: spec.material ?? 'white ash',
    blank,
    outline,
    bevels: spec.bevels ?? [],
    openings: spec.openings ?? [],
    mortises: [],
    holes: spec.holes ?? [],
    slots: spec.slots ?? [],
    grooves: spec.grooves ?? [],
  };
}
