import type { Design } from '../../assembly/index.js';
import { type BoardOutside, boardOutside } from '../../board/index.js';
import { scale, type Vec3 } from '../../frame/index.js';
import type { Say } from '../../length/index.js';
import { USUAL_SEASON } from '../../movement/index.js';
import { onceForEach } from '../../once.js';
import { type GlueStep, glueUp, type Shop, toldBy, toolLimits } from '../../shop/index.js';
import { type Outside, outsideIn, parted } from '../../solid/index.js';
import { moving, quickResting, type Strength, strengthOf } from '../../strength/index.js';
import type { FigureBench } from '../bench/index.js';
import { endInset, mortiseDepth, tenonThickness, walls } from '../boards/index.js';
import { type Finding, findingsOf } from '../finding/index.js';
import { inLine, tenonFit } from '../joints/index.js';
import { stuck } from '../shop/index.js';
import { quickFigures } from './quick-figures.js';

/** What the data of a design alone tell, in the time between two pictures of a slider that is dragged. */
export interface QuickVerdict {
  /** In the codes of the full verdict; a wall may be told thinner than it is, never thicker. */
  readonly findings: readonly Finding[];
  /** What only the full verdict can settle, in words. */
  readonly open: readonly string[];
  /** No error, and nothing left open: the full verdict finds none on boards and joints either. */
  readonly sound: boolean;
}

/** What a mortise is cut with. */
export interface ToolsAtHand {
  readonly shop: Shop;
  /** Thickness of the jig's plate, mm. */
  readonly plate: number;
}

/**
 * Mortises the router and its cutter may not reach the bottom of through the plate. One whose mouth leans is cut from a face of
 * an earlier stage, deeper, or from none.
 */
const outOfReach = (design: Design, say: Say, { shop, plate }: ToolsAtHand): string[] =>
  design.boards.flatMap(({ board }) =>
    board.mortises
      .filter((mortise) => mortise.faceNormal || toolLimits(mortise, plate, shop, say).length > 0)
      .map(({ id }) => `reach into mortise ${id} of ${board.id}`),
  );

/**
 * A verdict from the data alone: fit, depth, inset, walls, one line, and whether planes part the boards where they stand and on
 * the way to their seats. No solid is made. What a mechanism asks for is left open;
 * of the shop only the reach of its router and cutters is looked at: how the jig holds each board only the full verdict tells.
 */
export function quickVerdict(design: Design, say: Say, tools?: ToolsAtHand): QuickVerdict {
  const { tenons, open } = quickFigures(design);
  const bench: FigureBench = {
    tenons,
    say,
    solids: { boards: new Map(design.boards.map((placed) => [placed.board.id, placed])) },
  };
  const glue = glueUp(design);
  const told = tools && toldBy(tools.shop);
  const strong = strengthOf(design, () => quickResting(design), told, true);
  const findings = [
    ...[tenonFit, inLine, walls, mortiseDepth, endInset, tenonThickness].flatMap((check) => check(bench)),
    ...stuck(bench, { glueUp: glue, inTheWay: [] }),
    ...findingsOf(moving(design, told?.season ?? USUAL_SEASON).margins, say),
    ...findingsOf(strong?.margins ?? [], say),
  ];
  const left = [
    ...open,
    ...(tools ? outOfReach(design, say, tools) : []),
    ...unknown(design),
    ...glue.loose,
    ...notParted(design, glue.steps),
    ...nearTipping(strong),
  ];
  const failed = findings.some(({ level }) => level === 'error');
  return { findings, open: left, sound: !failed && left.length === 0 };
}

/** Whether a seat stands turns on its mass, which is not taken from the solids here: near the limit it is left open, N. */
const NEAR_TIPPING = 30;

const nearTipping = (found: Strength | undefined): string[] =>
  (found?.margins ?? [])
    .filter(
      ({ unit, error, figure }) =>
        unit === 'N' && error !== undefined && Math.abs(figure - error) < NEAR_TIPPING,
    )
    .map(({ what }) => what);

/** What of a design, its boards and tenons these ways know; whatever else they hold is left to the full verdict. */
const KNOWN = {
  design: words('name title cutter boards joints patchesLeft uses user stock derived explode notes'),
  board: words('id name material blank outline bevels openings mortises'),
  tenon: words('id place thickness width length intoA intoB'),
} as const;

function words(text: string): ReadonlySet<string> {
  return new Set(text.split(' '));
}

function unknown(design: Design): string[] {
  const others = (of: object, known: ReadonlySet<string>, what: string): string[] =>
    Object.entries(of)
      .filter(([name, value]) => !known.has(name) && !isNothing(value))
      .map(([name]) => `${name} of ${what}`);
  return [
    ...others(design, KNOWN.design, design.name),
    ...design.boards.flatMap(({ board }) => others(board, KNOWN.board, board.id)),
    ...design.joints.flatMap(({ tenons }) => tenons.flatMap((tenon) => others(tenon, KNOWN.tenon, tenon.id))),
  ];
}

const isNothing = (value: unknown): boolean =>
  value === undefined || (Array.isArray(value) && value.length === 0);

/** The same with its numbers in a row. */
const flat = onceForEach(
  ({ corners, normals }: BoardOutside): Outside => ({
    corners: inARow(corners),
    normals: inARow(normals),
  }),
);

function inARow(all: readonly Vec3[]): Float64Array {
  const row = new Float64Array(3 * all.length);
  for (let i = 0; i < all.length; i += 1) for (let k = 0; k < 3; k += 1) row[3 * i + k] = all[i]![k]!;
  return row;
}

/** Pairs of boards no plane parts where they stand, or on the way of a step. */
function notParted(design: Design, steps: readonly GlueStep[]): string[] {
  const outsides = new Map(
    design.boards.map(({ board, place }) => [board.id, outsideIn(flat(boardOutside(board)), place)] as const),
  );
  const ids = [...outsides.keys()];
  const standing = ids.flatMap((a, i) =>
    ids
      .slice(i + 1)
      .flatMap((b) => (parted(outsides.get(a)!, outsides.get(b)!) ? [] : [`overlap of ${a} and ${b}`])),
  );
  const moving = steps.flatMap(({ id, moving: group, still, direction, travel }) =>
    group.flatMap((a) => {
      const path = drawnOut(outsides.get(a)!, scale(direction, -travel));
      return still.flatMap((b) => (parted(path, outsides.get(b)!) ? [] : [`way of ${a} past ${b} in ${id}`]));
    }),
  );
  return [...standing, ...moving];
}

/** The corners of a body where it stands and where it starts. */
const drawnOut = ({ corners, normals }: Outside, from: Vec3): Outside => {
  const all = new Float64Array(2 * corners.length);
  all.set(corners);
  for (let i = 0; i < corners.length; i += 1) all[corners.length + i] = corners[i]! + from[i % 3]!;
  return { corners: all, normals };
};
