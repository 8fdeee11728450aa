import { InputError } from '../../src/errors.js';
import type { Units } from '../../src/length/index.js';
import { NOISE } from '../../src/tolerances.js';
import { type BoltStack, boltStack } from './bolts.js';
import type { JigValues } from './jig-values.js';
import { type Mounting, mounting } from './mounting.js';
import { KNOB_GAP, RAIL_BEYOND, SLOT_PLAY } from './practice.js';
import { type RouterBase, routerBase } from './router-base.js';
import { STEP } from './usual.js';

/** Every size the jig is made to; mm. x runs along the rails, y across the work, both from the cutter's centre. */
export interface Layout {
  readonly base: RouterBase;
  readonly mounting: Mounting;
  readonly stack: BoltStack;
  readonly slotWidth: number;
  readonly slotLength: number;
  /** |x| of both slots. */
  readonly slotPosition: number;
  readonly plateLength: number;
  readonly plateWidth: number;
  readonly railLength: number;
  /** Gap between the rails that can really be had, as near to the asked range as the parts allow. */
  readonly narrowest: number;
  readonly widest: number;
  /** Gap the rails are drawn at: half way. */
  readonly drawn: number;
}

/** @throws InputError when the sizes do not fit each other */
export function layOut(v: JigValues, units: Units = 'mm'): Layout {
  checkAsked(v);
  const base = routerBase(v, units);
  const stack = boltStack(v);
  const above = Math.max(v.knobDiameter, stack.bolt.largeWasher.diameter);
  const slotWidth = stack.bolt.clearanceHole;
  const whole = (value: number) => Math.ceil(value / STEP[units] - NOISE) * STEP[units];
  const slotLength = v.slotLength ?? whole(v.workMax + v.railWidth + slotWidth + 2 * SLOT_PLAY);
  const slotPosition = v.slotPosition ?? whole(base.halfLength + v.knobClearance + above / 2);
  const plateLength = v.plateLength ?? whole(2 * (slotPosition + slotWidth / 2 + v.bridge));
  const plateWidth = v.plateWidth ?? whole(Math.max(slotLength + 2 * v.bridge, 2 * base.halfWidth));
  const railLength = v.railLength ?? plateLength + 2 * RAIL_BEYOND[units];
  const widest = slotLength - slotWidth - v.railWidth;
  if (widest <= 0)
    throw new InputError(
      'slot-too-short',
      (say) =>
        `plate: slots ${say.fine(slotLength)} long leave no gap between two rails ${say.fine(v.railWidth)} wide; they must be longer than ${say.length(slotWidth + v.railWidth)}: lengthen them`,
    );
  if (railLength / 2 - slotPosition <= stack.counterboreDiameter / 2)
    throw new InputError(
      'rail-too-short',
      (say) =>
        `rails: ${say.fine(railLength)} long, they have no room for bolts ${say.fine(slotPosition)} from the middle; they must be longer than ${say.length(2 * slotPosition + stack.counterboreDiameter)}: lengthen them`,
    );
  const narrowest = Math.min(widest, Math.max(v.workMin, above + KNOB_GAP - v.railWidth));
  return {
    base,
    mounting: mounting(v, base),
    stack,
    slotWidth,
    slotLength,
    slotPosition,
    plateLength,
    plateWidth,
    railLength,
    narrowest,
    widest,
    drawn: (narrowest + widest) / 2,
  };
}

function checkAsked(v: JigValues): void {
  if (v.workMin > v.workMax)
    throw new InputError(
      'work-range',
      (say) =>
        `work: the thinnest, ${say.fines(v.workMin, v.workMax)[0]}, is thicker than the thickest, ${say.fines(v.workMin, v.workMax)[1]}: swap work-min and work-max`,
    );
  if (v.cutter >= v.bitOpening)
    throw new InputError(
      'opening-too-small',
      (say) =>
        `plate: a ${say.fine(v.cutter)} cutter does not pass through an opening of ${say.fine(v.bitOpening)}: make the opening larger`,
    );
}
