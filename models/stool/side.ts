import { mirrored, type PlacedBoard, trimmed } from '../../src/assembly/index.js';
import { type Bevel, makeBoard } from '../../src/board/index.js';
import { cross, directionIn, type Frame, frame, levelAt, scale } from '../../src/frame/index.js';
import { type Profile, polygon } from '../../src/profile/index.js';
import type { Layout, Step } from './layout.js';

/**
 * Both sides: raked outwards, tapered, with a foot arch, and stepped when there are two treads.
 *
 * Board frame: reference face = outer face, reference end = foot, measured up the grain from the foot's long point. The right one is
 * measured from its front edge; the left one is its mirror image.
 */
export function sides(l: Layout): readonly [left: PlacedBoard, right: PlacedBoard] {
  const right = rightSide(l);
  return [mirrored(right, { point: [0, 0, 0], normal: [1, 0, 0] }, 'left-side'), right];
}

function rightSide(l: Layout): PlacedBoard {
  const blank = { length: l.side.length, width: l.footBack - l.footFront, thickness: l.side.thickness };
  const board = makeBoard({
    id: 'right-side',
    material: l.material,
    blank,
    outline: fromFront(l, outline(l)),
  });
  const place = frame([l.outerAt(0), l.footFront, 0], cross(l.lean.up, [0, 1, 0]), l.lean.up);
  const floor = levelAt(0);
  const sawn = trimmed(
    trimmed({ board, place }, { ...floor, normal: scale(floor.normal, -1) }, 'foot'),
    levelAt(l.under),
    'top',
  );
  return l.step
    ? { ...sawn, board: { ...sawn.board, bevels: [...sawn.board.bevels, ...step(l, l.step, place)] } }
    : sawn;
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

/** The seat of the step, level like the top; the corner behind it keeps its round. */
function step(l: Layout, { seat, front, riser, radius }: Step, place: Frame): readonly Bevel[] {
  const run = l.side.bevelRun;
  if (run === 0) return [];
  const strip: readonly Corner[] = [
    { x: seat - run - 1, y: front - run - 1 },
    { x: seat + 1, y: front - run - 1 },
    { x: seat + 1, y: riser - radius },
    { x: seat - run - 1, y: riser - radius },
  ];
  return [
    {
      id: 'step',
      point: [seat, 0, l.side.thickness],
      normal: directionIn(place, [0, 0, 1]),
      within: fromFront(l, strip),
    },
  ];
}

/** Corners in assembly y become a profile measured from the front edge. */
const fromFront = (l: Layout, corners: readonly Corner[]): Profile =>
  polygon(corners.map((corner) => ({ ...corner, y: corner.y - l.footFront })));
