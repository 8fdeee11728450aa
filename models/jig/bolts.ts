import { InputError } from '../../src/errors.js';
import { boltLengthFrom, boltLengthUpTo, type Fastener, fastener } from '../../src/tables/index.js';
import type { JigValues } from './jig-values.js';
import { HEAD_BELOW, HEAD_SIDE_AIR, RAIL_FLOOR, THREAD_DIAMETERS, TIP_AIR } from './practice.js';

/** One bolt through rail, plate, washer and knob. mm */
export interface BoltStack {
  readonly bolt: Fastener;
  readonly length: number;
  readonly counterboreDiameter: number;
  readonly counterboreDepth: number;
  /** Thread in the knob. */
  readonly engaged: number;
}

/**
 * The bolt that fills the knob by a diameter and leaves its tip free: the next standard length up, or, when that one would
 * bottom, the next one down in a deeper counterbore.
 *
 * @throws InputError when no bolt does both, or the counterbore leaves too little of the rail or of the head
 */
export function boltStack(v: JigValues): BoltStack {
  const bolt = fastener(v.boltSize);
  if (v.knobThread >= v.knobHeight)
    throw new InputError(
      'knob-thread',
      (say) =>
        `knob: its thread is ${say.fine(v.knobThread)} deep, and the knob only ${say.fine(v.knobHeight)} high; the thread must be less deep than that: measure both again`,
    );
  const shallow = bolt.hexHead.height + HEAD_BELOW;
  const above = v.plateThickness + bolt.largeWasher.thickness;
  const chosen =
    v.boltLength ?? standardLength(v, bolt, v.railHeight - (v.counterboreDepth ?? shallow) + above);
  const least = v.railHeight - shallow + above + THREAD_DIAMETERS * bolt.diameter;
  // a shorter bolt is let in deeper until it fills the knob by a diameter
  const deeper = Math.max(0, least - chosen);
  const counterboreDepth = v.counterboreDepth ?? shallow + deeper;
  if (counterboreDepth < bolt.hexHead.height)
    throw new InputError(
      'counterbore-too-shallow',
      (say) =>
        `rails: counterbores ${say.fine(counterboreDepth)} deep leave the ${v.boltSize} heads, ${say.length(bolt.hexHead.height)} high, standing proud: make them at least that deep`,
    );
  if (v.railHeight - counterboreDepth < RAIL_FLOOR)
    throw new InputError(
      'counterbore-too-deep',
      (say) =>
        `rails: counterbores ${say.length(counterboreDepth)} deep leave ${say.lengths(v.railHeight - counterboreDepth, RAIL_FLOOR)[0]} of a rail ${say.fine(v.railHeight)} high; they must leave at least ${say.lengths(v.railHeight - counterboreDepth, RAIL_FLOOR)[1]}: make the rails higher, or give a bolt length`,
    );
  const sharpCorners = (bolt.hexHead.acrossFlats * 2) / Math.sqrt(3);
  return {
    bolt,
    length: chosen,
    counterboreDiameter: v.counterboreDiameter ?? Math.ceil(sharpCorners + 2 * HEAD_SIDE_AIR),
    counterboreDepth,
    engaged: chosen - (v.railHeight - counterboreDepth + above),
  };
}

function standardLength(v: JigValues, bolt: Fastener, toKnob: number): number {
  const least = toKnob + THREAD_DIAMETERS * bolt.diameter;
  const most = toKnob + v.knobThread - TIP_AIR;
  if (most < least)
    throw new InputError(
      'knob-thread-short',
      (say) =>
        `knob: its thread is ${say.fine(v.knobThread)} deep; ${v.boltSize} bolts need at least ${say.length(least - toKnob + TIP_AIR)}: use knobs with a deeper thread, or thinner bolts`,
    );
  const up = boltLengthFrom(bolt.system, least);
  if (up !== undefined && up <= most) return up;
  const down = boltLengthUpTo(bolt.system, most);
  if (down !== undefined) return down;
  throw new InputError(
    'no-standard-bolt',
    (say) =>
      `bolts: no standard length lies between ${say.length(least)} and ${say.length(most)}: change the height of the rails or give a bolt length`,
  );
}
