import type { Board, FaceId } from '../../board/index.js';
import type { Say } from '../../length/index.js';
import { type Holding, THICK_END, type ThickEnd } from '../holding/index.js';
import { faceWords } from '../words/index.js';

/** Where the cutter is let down to touch the wood when the depth is zeroed: a mortise is square to the face the plate lies on. */
export const zeroPoint = (mouths: readonly { readonly board: Board; readonly face: FaceId }[]): string =>
  `on the ${[...new Set(mouths.map(({ board, face }) => faceWords(board, face)))].join(' or the ')}`;

/** Where a wedge's thick end points, to the person who stands with the near rail towards them. */
export function thickEndWords(end: ThickEnd): string {
  const [x, , z] = THICK_END[end];
  if (z !== 0) return z > 0 ? 'up, towards the router' : 'down';
  return x > 0 ? 'to your right' : 'to your left';
}

/** Warnings where the danger is; common practice. */
export function cautions(holding: Holding, shortPiece: boolean, say: Say): readonly string[] {
  return [
    'Unplug the router before you change the cutter, its height or the collet.',
    `Push the shank in, then back off about ${say.units === 'in' ? '1/8"' : '3 mm'} before you tighten: a bottomed shank works loose.`,
    'Wear eye, ear and dust protection. Clear the chips between passes: packed chips scorch the walls.',
    'No climb cuts: feed the other way only where the card says so.',
    'If the cutter is marked with a lower speed, keep to that.',
    ...(holding.way === 'guide board' || holding.way === 'windowed template'
      ? ['Keep the same handle towards you: few bases are quite concentric with the cutter.']
      : []),
    ...(holding.window ? ['Let the router stop before you lift it out of the opening.'] : []),
    ...(shortPiece ? ['Short piece: hold it in the vice or clamp it to a longer board, never by hand.'] : []),
  ];
}

/** How a test cut of a turned mortise is put right when it is off. */
export const TURNED_CORRECTION =
  'scribe a centre line on the blank and set the guide or the template from it; after the cut measure from the line to the walls of the slot, at both ends: they must stand alike on both sides; move the guide or the template by half the difference, towards the nearer wall';

/** How a test cut is put right when it is off; the walls it should have are on the card. */
export function correction(near: number | undefined, far: number | undefined, say: Say): string {
  if (near === undefined || far === undefined) {
    const wall = near ?? far;
    return wall === undefined
      ? 'measure from the named face to both walls of the slot and take their middle: move the guide by the difference, away from the face when it is too little'
      : `measure the wall between slot and rail; ${say.setting(wall)} is right: move the rail by the difference, towards the cutter when the wall is too thick, away when it is too thin`;
  }
  const difference = near - far;
  return Math.abs(difference) < 0.005
    ? 'measure both walls; shift = (near wall − far wall) / 2: a positive one moves the slot towards the near face, so set the near rail closer by the shift and the far rail farther by as much; negative the other way'
    : `measure both walls; shift = ((near wall − far wall) − (${say.setting(difference)})) / 2: a positive one moves the slot towards the near face, so set the near rail closer by the shift and the far rail farther by as much; negative the other way`;
}
