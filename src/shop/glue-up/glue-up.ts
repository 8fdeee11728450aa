import type { Design } from '../../assembly/index.js';
import { scale, type Vec3 } from '../../frame/index.js';
import type { GlueAtHand } from '../at-hand/index.js';
import { markOf } from '../words/index.js';
import { piecesOf } from './blocking-graph.js';
import type { Entry, Freedom, JointFreedom } from './entry.js';
import { entriesOf } from './glue-up-entry.js';
import type { Blocked, OrderStep } from './glue-up-move.js';
import { type Conflict, orderOf } from './glue-up-order.js';
import { type GlueStage, gluedStages, stagesByTime } from './glue-up-stages.js';
import { panelEntries } from './panel-entries.js';

/** Two groups of boards brought together. mm, assembly frame. */
export interface GlueStep {
  /** `G1`, `G2` … in the order of the work. */
  readonly id: string;
  /** Boards of the group that is moved, and of the one that stands. */
  readonly moving: readonly string[];
  readonly still: readonly string[];
  /** Travel of the moving group, unit. */
  readonly direction: Vec3;
  /** From where all tenons are outside to the seat. */
  readonly travel: number;
  readonly joints: readonly JointFreedom[];
  /** Panels that go into grooves in this step, without glue. */
  readonly panels: readonly string[];
  /** Of the worst joint. */
  readonly freedom: Freedom;
  readonly shift: number;
  /** About how hard a board must be pushed aside; 0 when everything goes in free. */
  readonly forceN: number;
  /** Number of the stage it is glued in, from 1. */
  readonly stage: number;
}

/** A tenon glued into its first board, before the boards are brought together. */
export interface TenonSeating {
  readonly joint: string;
  readonly tenons: readonly string[];
  readonly board: string;
  /** The board they enter later. */
  readonly receiver: string;
  /** How far each stands out afterwards, mm: to be measured. */
  readonly standsOut: number;
}

/** A board fastened without glue, last of all. */
export interface Fixing {
  /** `F1`, `F2` …. */
  readonly id: string;
  readonly held: string;
  readonly to: readonly string[];
  /** Ids of its fastenings. */
  readonly fastenings: readonly string[];
  /** Travel of the held board to its seat, unit, assembly frame. */
  readonly direction: Vec3;
}

/** The glue-up of a design. */
export interface GlueUp {
  readonly seatings: readonly TenonSeating[];
  readonly steps: readonly GlueStep[];
  readonly stages: readonly GlueStage[];
  /** Boards that cannot be brought together; empty when everything can. */
  readonly conflicts: readonly Conflict[];
  /** What is put on after the glue has set, and held without glue; in the order of the design. */
  readonly fixings: readonly Fixing[];
  /** Boards that are joined to nothing and held by nothing. */
  readonly loose: readonly string[];
}

/**
 * The order in which a design is glued up: tenons into the part whose mortise is in end grain or an edge first, then
 * groups of boards, each by one translation that closes all joints between two groups.
 *
 * @param glue splits the steps into stages that fit its open time; one stage when it is not known
 * @param blocked boards known to meet on the way: found on the solids
 */
export function glueUp(design: Design, glue?: GlueAtHand, blocked: readonly Blocked[] = []): GlueUp {
  const glued = entriesOf(design);
  const entries = [...glued, ...panelEntries(design)];
  const groups = connectedBoards(design);
  const orders = groups
    .filter((boards) => boards.length > 1)
    .map((boards) => orderOf(boards, entries, blocked));
  const isJoint = (id: string) => glued.some(({ joint }) => joint.id === id);
  // a panel in its groove is no joint: nobody glues it
  const order = orders
    .flatMap(({ steps }) => steps)
    .map(({ move, ...step }) => ({
      ...step,
      move: { ...move, entries: move.entries.filter(({ joint }) => isJoint(joint)) },
    }));
  const stages = stagesByTime(
    order.map(({ move }) => move.entries.length),
    glue,
  );
  const steps = order.map((step, i) => stepOf(design, step, i, stages[i]!));
  const fixings = fixingsOf(design);
  const held = new Set(fixings.flatMap((one) => [one.held, ...one.to]));
  return {
    seatings: glued.map(seatingOf),
    steps,
    stages: gluedStages(steps, glue),
    conflicts: orders.flatMap(({ conflict }) =>
      conflict
        ? [
            {
              ...conflict,
              joints: conflict.joints.filter(isJoint),
              panels: panelsAmong(design, conflict.boards),
            },
          ]
        : [],
    ),
    fixings,
    loose: groups.filter((boards) => boards.length === 1 && !held.has(boards[0]!)).flat(),
  };
}

const panelsAmong = ({ captives = [] }: Design, boards: readonly string[]): readonly string[] =>
  captives.map(({ panel }) => panel).filter((id) => boards.includes(id));

function fixingsOf({ fastenings = [] }: Design): readonly Fixing[] {
  return [...new Set(fastenings.map(({ held }) => held))].map((held, i): Fixing => {
    const own = fastenings.filter((one) => one.held === held);
    return {
      id: markOf('fastening', i),
      held,
      to: [...new Set(own.map(({ to }) => to))],
      fastenings: own.map(({ id }) => id),
      direction: scale(own[0]!.at.z, -1),
    };
  });
}

function stepOf(design: Design, { moving, still, move }: OrderStep, index: number, stage: number): GlueStep {
  const parted = (one: string, other: string) =>
    (moving.includes(one) && still.includes(other)) || (moving.includes(other) && still.includes(one));
  return {
    id: markOf('glue-up step', index),
    moving,
    still,
    direction: move.direction,
    travel: move.distance,
    joints: move.entries,
    panels: (design.captives ?? [])
      .filter(({ panel, grooves }) => grooves.some(({ board }) => parted(panel, board)))
      .map(({ panel }) => panel),
    freedom: move.freedom,
    shift: Math.max(0, ...move.entries.map(({ shift }) => shift)),
    forceN: Math.max(0, ...move.entries.map(({ forceN }) => forceN ?? 0)),
    stage,
  };
}

function seatingOf({ joint, owner, receiver }: Entry): TenonSeating {
  const first = joint.tenons[0]!;
  return {
    joint: joint.id,
    tenons: joint.tenons.map(({ id }) => id),
    board: owner,
    receiver,
    standsOut: owner === joint.a ? first.intoB : first.intoA,
  };
}

/** Boards held together by joints, and panels with what holds them, in the order of the design. */
function connectedBoards(design: Design): readonly (readonly string[])[] {
  const ids = design.boards.map(({ board }) => board.id);
  const at = new Map(ids.map((id, i) => [id, i]));
  const neighbours = new Map(ids.map((_, i): [number, number[]] => [i, []]));
  const held = (design.captives ?? []).flatMap(({ panel, grooves }) =>
    grooves.map(({ board }) => ({ a: panel, b: board })),
  );
  for (const { a, b } of [...design.joints, ...held]) {
    neighbours.get(at.get(a)!)!.push(at.get(b)!);
    neighbours.get(at.get(b)!)!.push(at.get(a)!);
  }
  return piecesOf(new Set(ids.keys()), neighbours).map((piece) => ids.filter((_, i) => piece.has(i)));
}
