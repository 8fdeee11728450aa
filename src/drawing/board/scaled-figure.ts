import type { DrawnFigure } from '../flow/index.js';
import {
  type Box,
  entitiesBox,
  movedEntities,
  SCALES,
  type Scale,
  type SheetEntity,
} from '../sheet/index.js';

/** A drawing at one of the usual scales. */
export interface ScaledFigure extends DrawnFigure {
  readonly scale: Scale;
}

/**
 * A drawing at the largest of the usual scales at which it fits.
 *
 * @param room mm on the sheet
 * @param drawnAt the drawing at a scale, wherever it stands; undefined when it is known to fit nowhere
 * @returns undefined when it fits at no scale
 */
export function largestFigure(
  room: { readonly width: number; readonly height: number },
  drawnAt: (scale: Scale, fits: (box: Box) => boolean) => readonly SheetEntity[] | undefined,
): ScaledFigure | undefined {
  const fits = ({ minX, maxX, minY, maxY }: Box) => maxX - minX <= room.width && maxY - minY <= room.height;
  for (const scale of SCALES) {
    const drawn = drawnAt(scale, fits);
    const box = drawn && entitiesBox(drawn);
    if (!drawn || !box || !fits(box)) continue;
    return {
      kind: 'drawn',
      scale,
      width: box.maxX - box.minX,
      height: box.maxY - box.minY,
      draw: ([x, y]) => movedEntities(drawn, [x - box.minX, y - box.minY]),
    };
  }
  return undefined;
}
