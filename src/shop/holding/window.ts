import { type Board, type Mortise, makeBoard } from '../../board/index.js';
import { type Frame, frame, frameOut } from '../../frame/index.js';
import { obround } from '../../profile/index.js';
import type { BushAtHand, Shop } from '../at-hand/index.js';
import { CHIP_AIR, COLLAR_AIR, TEMPLATE_BEYOND } from '../practice/index.js';

/** A template whose opening a guide bush follows; mm. */
export interface Window {
  readonly bush: BushAtHand;
  /** Of the opening: the cut and the bush's lead round the cutter on both sides. */
  readonly length: number;
  readonly width: number;
  readonly sheet: string;
  readonly thickness: number;
  /** Of the template. */
  readonly along: number;
  readonly across: number;
  /** Board frame. */
  readonly place: Frame;
}

/**
 * The window for a mortise: opening = cut + (bush − cutter) along and across.
 *
 * @returns undefined when the shop has no bush the cutter passes, or no sheet thicker than its collar
 * @example a 12 mm bush and an 8 mm cutter: 40 × 8 needs an opening of 44 × 12
 */
export function windowFor(mortise: Mortise, shop: Shop): Window | undefined {
  for (const bush of shop.bushes.toSorted((a, b) => a.outside - b.outside)) {
    if (bush.bore < mortise.width + CHIP_AIR) continue;
    const sheet = shop.sheets
      .filter((one) => one.thickness >= bush.collarLength + COLLAR_AIR)
      .toSorted((a, b) => a.thickness - b.thickness)[0];
    if (!sheet) continue;
    const lead = bush.outside - mortise.width;
    const along = Math.ceil(mortise.length + shop.router.base.along + 2 * TEMPLATE_BEYOND);
    const across = Math.ceil(shop.router.base.across + 2 * TEMPLATE_BEYOND);
    return {
      bush,
      length: mortise.length + lead,
      width: mortise.width + lead,
      sheet: sheet.name,
      thickness: sheet.thickness,
      along,
      across,
      place: frameOut(mortise.at, frame([-along / 2, -across / 2, 0], [0, 0, 1], [1, 0, 0])),
    };
  }
  return undefined;
}

/** The template as a board. */
export const windowBoard = (id: string, window: Window): Board =>
  makeBoard({
    id,
    material: window.sheet,
    blank: { length: window.along, width: window.across, thickness: window.thickness },
    openings: [
      {
        id: 'window',
        outline: obround({
          length: window.length,
          width: window.width,
          centre: [window.along / 2, window.across / 2],
        }),
      },
    ],
  });
