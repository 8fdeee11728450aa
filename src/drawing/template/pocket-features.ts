import { type Follower, type Mortise, pocketCutter, type Slot, standOff } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import type { Rule } from '../../length/index.js';
import { obround, type Profile } from '../../profile/index.js';
import { edgeMarks, enters, extentAlongEdge, lies } from './edge-marks.js';
import { type Feature, faceName, labelOf, size, spot, toolSize } from './feature.js';
import { dashingOf, from, inPlane, LETTER, line, OVERRUN, words } from './strokes.js';
import type { LineEntity } from './template.js';
import { windowLines } from './template-line.js';

/** A mortise in a wide face: the window, its centre line, both end marks. */
export function mortiseWindow(mark: string, mortise: Mortise, follower: Follower, units: Rule): Feature {
  const { at, width, length, depth, face, joint } = mortise;
  const centre: Vec2 = [at.origin[0], at.origin[1]];
  const along = inPlane(at.x);
  const off = standOff(follower, width);
  const pocket = obroundAt(centre, along, length, width);
  return {
    entities: [
      ...windowLines('POCKET', pocket, off, dashingOf(face)),
      ...layoutLines(centre, along, length, width + 2 * off),
      words(from(centre, along, length / 2 + off + OVERRUN + LETTER / 2, -LETTER / 2), labelOf(mark, face)),
    ],
    mark,
    row: `mortise ${toolSize(width, units)} x ${size(length, units)}, ${size(depth, units)} deep, into the ${faceName(face)}, centre ${spot(...centre, units)}${ownCutter(follower, width, units)}, joint ${joint}`,
  };
}

/** A slot in a wide face; one through the board is cut, one with an open end runs past it by its own width. */
export function slotWindow(mark: string, slot: Slot, follower: Follower, units: Rule): Feature {
  const { at, width, depth, face, openAt } = slot;
  const along = inPlane(at.x);
  const run = openAt === undefined ? 0 : width;
  const shift = openAt === undefined ? 0 : ((openAt === 'end' ? 1 : -1) * run) / 2;
  const middle: Vec2 = [at.origin[0], at.origin[1]];
  const off = standOff(follower, width);
  const pocket = obroundAt(from(middle, along, shift), along, slot.length + run, width);
  const through = depth === 'through';
  return {
    entities: [
      ...windowLines(through ? 'CUT' : 'POCKET', pocket, off, through ? undefined : dashingOf(face)),
      ...layoutLines(middle, along, slot.length, width + 2 * off),
      words(from(middle, along, OVERRUN, LETTER / 2), through ? mark : labelOf(mark, face)),
    ],
    mark,
    row: `slot ${toolSize(width, units)} x ${size(slot.length, units)}, ${through ? 'through the board' : `${size(depth, units)} deep, into the ${faceName(face)}`}${openAt === undefined ? '' : ', one end open'}, middle ${spot(...middle, units)}${ownCutter(follower, width, units)}`,
  };
}

/** A slot in an end, an edge or a bevel, shown where it meets the template's line. */
export function slotInEdge(mark: string, slot: Slot, depthSeen: number, units: Rule): Feature {
  const { at, width, depth, face } = slot;
  const into = depth === 'through' ? 'through' : `${size(depth, units)} deep`;
  return {
    entities: edgeMarks(mark, at, extentAlongEdge(slot), depth === 'through' ? depthSeen : depth),
    mark,
    row: `slot ${toolSize(width, units)} x ${size(slot.length, units)} ${into}, into ${enters(face)}, its length ${lies(at)}, middle ${spot(at.origin[0], at.origin[1], units)}`,
  };
}

/** Said where the window is made for another cutter than the outline. */
const ownCutter = (follower: Follower, width: number, units: Rule): string => {
  const cutter = pocketCutter(follower, width);
  return cutter === follower.cutter ? '' : `, window for a cutter of ${toolSize(cutter, units)}`;
};

const obroundAt =
  (centre: Vec2, along: Vec2, length: number, width: number) =>
  (grownBy: number): Profile =>
    obround({
      length: length + 2 * grownBy,
      width: width + 2 * grownBy,
      centre,
      directionDeg: (Math.atan2(along[1], along[0]) * 180) / Math.PI,
    });

/** Centre line along a pocket and a mark across each end. */
function layoutLines(centre: Vec2, along: Vec2, length: number, across: number): LineEntity[] {
  const reach = length / 2 + OVERRUN;
  const half = across / 2 + OVERRUN;
  return [
    line('MARK', from(centre, along, -reach), from(centre, along, reach), 'centre'),
    ...[-length / 2, length / 2].map((end) =>
      line('MARK', from(centre, along, end, -half), from(centre, along, end, half)),
    ),
  ];
}
