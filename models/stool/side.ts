import type { Bevel, Board } from '../../src/board/index.js';
import { makeBoard } from '../../src/board/index.js';
import { type Frame, frame, type Vec3 } from '../../src/frame/index.js';
import { type Profile, polygon } from '../../src/profile/index.js';
import type { Layout } from './layout.js';

export type Hand = 'left' | 'right';

/**
 * One side board: raked outwards, tapered, with a foot arch, and stepped when there are two treads.
 *
 * Board frame: reference face = outer face, reference end = foot, measured up the grain from the foot's long point. The
 * left one is measured from its back edge and the right one from its front edge: they are mirror images.
 */
export function sideBoard(hand: Hand, l: Layout): Board {
  const id = `${hand}-side`;
  return makeBoard({
    id,
    name: `${hand} side`,
    material: l.material,
    blank: { length: l.side.length, width: l.footBack - l.footFront, thickness: l.side.thickness },
    outline: acrossFrom(hand, l, outline(l)),
    bevels: bevels(hand, l),
  });
}

/** Where a side stands: the foot's long point of the outer face on the floor. */
export function sidePlace(hand: Hand, l: Layout): Frame {
  const sign = hand === 'left' ? -1 : 1;
  const up: Vec3 = [-sign * Math.sin(l.rake), 0, Math.cos(l.rake)];
  const inwards: Vec3 = [-sign * Math.cos(l.rake), 0, -Math.sin(l.rake)];
  return frame([sign * l.outerAt(0), hand === 'left' ? l.footBack : l.footFront, 0], inwards, up);
}

type Corner = { x: number; y: number; radius?: number };

/** The outline with x up the grain and y as in the assembly, counter-clockwise. */
function outline(l: Layout): readonly Corner[] {
  const { length } = l.side;
  const back: Corner[] = [
    { x: length, y: l.topBack },
    { x: 0, y: l.footBack },
  ];
  const front: Corner[] = l.step
    ? [
        { x: 0, y: l.footFront },
        { x: l.step.seat, y: l.step.front },
        { x: l.step.seat, y: l.step.riser, radius: l.step.radius },
        { x: length, y: l.step.riser },
      ]
    : [
        { x: 0, y: l.footFront },
        { x: length, y: l.topFront },
      ];
  return [...front, ...back, ...arch(l)];
}

/** The foot arch, from the back foot to the front one. */
function arch(l: Layout): Corner[] {
  if (!l.arch) return [];
  const { height, radius, from, to } = l.arch;
  return [
    { x: 0, y: to },
    { x: height, y: to, radius },
    { x: height, y: from, radius },
    { x: 0, y: from },
  ];
}

function bevels(hand: Hand, l: Layout): readonly Bevel[] {
  if (l.rake === 0) return [];
  const thickness = l.side.thickness;
  const level: Vec3 = [Math.cos(l.rake), 0, -Math.sin(l.rake)];
  const foot: Bevel = { id: 'foot', point: [0, 0, 0], normal: [-level[0], 0, -level[2]] };
  const top: Bevel = { id: 'top', point: [l.side.length, 0, thickness], normal: level };
  if (!l.step) return [foot, top];
  const { seat, front, riser, radius } = l.step;
  const run = l.side.bevelRun;
  const strip: readonly Corner[] = [
    { x: seat - run - 1, y: front - run - 1 },
    { x: seat + 1, y: front - run - 1 },
    { x: seat + 1, y: riser - radius },
    { x: seat - run - 1, y: riser - radius },
  ];
  const step: Bevel = {
    id: 'step',
    point: [seat, 0, thickness],
    normal: level,
    within: acrossFrom(hand, l, strip),
  };
  return [foot, top, step];
}

/** Corners in assembly y become a profile measured from the hand's reference edge. */
function acrossFrom(hand: Hand, l: Layout, corners: readonly Corner[]): Profile {
  const placed = corners.map((corner) => ({
    ...corner,
    y: hand === 'left' ? l.footBack - corner.y : corner.y - l.footFront,
  }));
  return polygon(hand === 'left' ? placed.toReversed() : placed);
}
