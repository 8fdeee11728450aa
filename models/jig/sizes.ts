import type { Tools } from '../../src/model/index.js';
import { fastener } from '../../src/tables/index.js';
import type { JigGiven, JigValues } from './jig-values.js';
import {
  CUTTER_AIR,
  HEAD_BELOW,
  KNOB_GAP,
  OPENING_AIR,
  RAIL_FLOOR,
  THREAD_DIAMETERS,
  TIP_AIR,
} from './practice.js';
import { USUAL } from './usual.js';

/** From the circle of the mounting holes to the edge of a round base, and to the opening, over both sides: a countersunk head, and wood. */
const ROUND_HOLES = 20;

/** Solid knob above its thread, usual and least. */
const KNOB_TOP = 8;
const LEAST_KNOB_TOP = 3;

/** Wood beside a counterbore. */
const BESIDE_COUNTERBORE = 6;

/**
 * Works out what was left out from what was given, so that one size asked for finds its neighbours ready for it. A size that was given is
 * never touched.
 *
 * @param tools the cutter is the thickest of them that fits, where one does
 */
export function sized(v: JigGiven, { units = 'mm', cutters }: Tools): JigValues {
  const usual = USUAL[units];
  const bolt = fastener(v.boltSize);
  const onCircle = v.mounting === 'circle' && v.routerBase !== 'rectangle';
  const baseDiameter =
    v.baseDiameter ?? Math.max(usual.baseDiameter, onCircle ? (v.holeCircle ?? 0) + ROUND_HOLES : 0);
  const holeCircle =
    v.holeCircle ??
    Math.max(
      Math.min(usual.holeCircle, onCircle ? baseDiameter - ROUND_HOLES : usual.holeCircle),
      (v.bitOpening ?? 0) + ROUND_HOLES,
    );
  const gap = v.workMin ?? v.workMax ?? usual.workMin;
  const thickest = Math.max(
    4,
    Math.min(usual.cutter, gap - 2 * CUTTER_AIR, (v.bitOpening ?? usual.bitOpening) - 2 * OPENING_AIR),
  );
  const fitting = cutters.filter((one) => one >= 4 && one <= thickest);
  const cutter = v.cutter ?? (fitting.length > 0 ? Math.max(...fitting) : thickest);
  const bitOpening =
    v.bitOpening ?? Math.max(cutter + 2 * OPENING_AIR, Math.min(usual.bitOpening, holeCircle - ROUND_HOLES));
  const railWidth =
    v.railWidth ??
    Math.max(
      usual.railWidth,
      v.knobDiameter + KNOB_GAP - (v.workMin ?? usual.workMin),
      (v.counterboreDiameter ?? 0) + 2 * BESIDE_COUNTERBORE,
    );
  const opens = v.slotLength === undefined ? usual.workMax : v.slotLength - bolt.clearanceHole - railWidth;
  const workMax =
    v.workMax ??
    Math.max(Math.min(usual.workMax, opens), v.workMin ?? Math.min(opens, cutter + 2 * CUTTER_AIR), 8);
  const workMin = v.workMin ?? Math.min(workMax, Math.max(usual.workMin, cutter + 2 * CUTTER_AIR));
  const above = v.plateThickness + bolt.largeWasher.thickness + THREAD_DIAMETERS * bolt.diameter + TIP_AIR;
  const railHeight =
    v.railHeight ??
    Math.max(
      usual.railHeight,
      (v.counterboreDepth ?? 0) + RAIL_FLOOR,
      Math.min(120, (v.boltLength ?? 0) - above + bolt.hexHead.height + HEAD_BELOW),
    );
  const knobHeight = v.knobHeight ?? Math.max(usual.knobHeight, (v.knobThread ?? 0) + KNOB_TOP);
  const knobThread = v.knobThread ?? Math.min(usual.knobThread, knobHeight - LEAST_KNOB_TOP);
  return {
    ...v,
    baseDiameter,
    holeCircle,
    bitOpening,
    cutter,
    workMin,
    workMax,
    railWidth,
    railHeight,
    knobHeight,
    knobThread,
  };
}
