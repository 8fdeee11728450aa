import type { Design } from '../../assembly/index.js';
import { add, angleDeg, dot, scale, subtract, unit, type Vec3 } from '../../frame/index.js';
import type { Joint } from '../../joinery/index.js';
import type { Entry } from '../glue-up/index.js';

/** A line of force before its ends are known. */
export interface ClampLine {
  readonly rail: string;
  readonly joints: readonly Joint[];
  readonly through: Vec3;
  readonly direction: Vec3;
  /** Boards the two jaws bear on: along the direction, and against it. */
  readonly bears: readonly [string, string];
  /** How wide the rail is along its row of mortises, mm. */
  readonly width: number;
}

/** Each rail whose joints close now, with the line through the middle of its joints. */
export function clampLines(
  design: Design,
  all: readonly Entry[],
  now: readonly Entry[],
  glued: ReadonlySet<string>,
): readonly ClampLine[] {
  const done = new Set<string>();
  return now.flatMap((entry) => {
    if (done.has(entry.joint.id)) return [];
    const board = design.boards.find((one) => one.board.id === entry.owner)!;
    const opposite = all.find(
      (other) => other.owner === entry.owner && other !== entry && angleDeg(other.axis, entry.axis) > 135,
    );
    const middle = middleOf(entry.joint);
    done.add(entry.joint.id);
    const width = seatRun(entry.joint, board.place.y, board.board.blank);
    if (opposite) {
      const closesToo = now.includes(opposite);
      const there = closesToo || glued.has(opposite.joint.id);
      if (closesToo) done.add(opposite.joint.id);
      return [
        {
          rail: entry.owner,
          joints: closesToo ? [entry.joint, opposite.joint] : [entry.joint],
          through: middle,
          direction: unit(subtract(middle, middleOf(opposite.joint))),
          bears: [entry.receiver, there ? opposite.receiver : entry.owner] as const,
          width,
        },
      ];
    }
    const grain = dot(board.place.x, entry.axis) > 0 ? board.place.x : scale(board.place.x, -1);
    const direction = angleDeg(grain, entry.axis) < 45 ? grain : entry.axis;
    return [
      {
        rail: entry.owner,
        joints: [entry.joint],
        through: middle,
        direction,
        bears: [entry.receiver, entry.owner] as const,
        width,
      },
    ];
  });
}

/** Middle of a joint's glue: that of its tenons where they cross the seat. */
export const middleOf = ({ tenons }: Joint): Vec3 =>
  scale(
    tenons.reduce<Vec3>((sum, { place }) => add(sum, place.origin), [0, 0, 0]),
    1 / tenons.length,
  );

/** How wide the rail is along its joint's row of mortises. */
function seatRun(joint: Joint, across: Vec3, blank: { width: number; thickness: number }): number {
  return Math.abs(dot(joint.seat.x, across)) > Math.SQRT1_2 ? blank.width : blank.thickness;
}
