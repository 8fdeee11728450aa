import type { Captive } from '../assembly/index.js';
import { dot, frameOut, pointOut, type Vec3 } from '../frame/index.js';
import { belowFace } from './board-body.js';
import { boxIn, hit } from './measure.js';
import type { Solids } from './solids.js';

/** How far the walls and the floor of a groove are looked for, mm. */
const REACH = 200;

/** What was found of a panel's edge in one groove, on the solids; mm. */
export interface CaptiveMeasure {
  readonly board: string;
  readonly groove: string;
  /** The way into the groove, seen from the panel: along its grain or across, and on which side. */
  readonly way: 'across' | 'along';
  readonly side: 1 | -1;
  /** How deep the panel stands in it, and how far it could go farther. */
  readonly engaged: number;
  readonly room: number;
  /** Air beside the panel, both faces together. */
  readonly air: number;
}

/** Measures a panel in each of its grooves: its tongue is what stands below the mouth, the groove is found by looking for wood. */
export const measureCaptive = (solids: Solids, captive: Captive): readonly CaptiveMeasure[] =>
  captive.grooves.map(({ board: id, groove: name }) => {
    const panel = solids.boards.get(captive.panel)!;
    const holder = solids.boards.get(id)!;
    const { at } = holder.board.grooves.find((one) => one.id === name)!;
    const stands = frameOut(holder.place, at);
    const below = belowFace(panel.body, stands.origin, stands.z, 0);
    const tongue = below.isEmpty() ? undefined : boxIn(below, stands);
    below.delete();
    const [x, y] = tongue
      ? [(tongue.min[0] + tongue.max[0]) / 2, (tongue.min[1] + tongue.max[1]) / 2]
      : [0, 0];
    const engaged = tongue ? -tongue.min[2] : 0;
    const place = (p: Vec3): Vec3 => pointOut(at, p);
    const look = (from: Vec3, to: Vec3) => hit(holder.own, place(from), place(to)) ?? REACH;
    const level = -Math.max(engaged / 2, 0.01);
    const depth = look([x, y, 1], [x, y, -REACH]) - 1;
    const width = look([x, y, level], [x, y + REACH, level]) + look([x, y, level], [x, y - REACH, level]);
    const across = dot(stands.z, panel.place.y);
    const along = dot(stands.z, panel.place.x);
    const way = Math.abs(across) > Math.abs(along) ? 'across' : 'along';
    return {
      board: id,
      groove: name,
      way,
      side: (way === 'across' ? across : along) > 0 ? -1 : 1,
      engaged,
      room: depth - engaged,
      air: width - (tongue ? tongue.max[1] - tongue.min[1] : 0),
    };
  });
