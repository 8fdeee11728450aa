import { type Mortise, mouthOf } from '../../board/index.js';
import type { Vec3 } from '../../frame/index.js';
import type { Region } from '../../profile/index.js';
import { obround, regionOf, unite } from '../../profile/index.js';
import { numberOf, remembered } from '../../remembered.js';
import { baseOf, HOLD, type Holding, holdOver, plateOf } from '../../shop/index.js';
import {
  type Body,
  belowFace,
  type MortiseMeasure,
  prism,
  section,
  sharedVolume,
} from '../../solid/index.js';
import {
  BEARING_GAP,
  CUT_RELATIVE,
  CUTTER_LEAD,
  HOLD_SLACK,
  OVERLAP_MM3,
  SECTION_BELOW,
  SKIN,
} from '../../tolerances.js';
import {
  type Bench,
  gapBetween,
  type Held,
  type Piece,
  pushed,
  type SetUp,
  setUpsOnSolids,
  sharedBy,
  sweptBound,
} from '../bench/index.js';
import { COMMON_PRACTICE, type Finding, MEASURED } from '../finding/index.js';

/**
 * Every set-up is tried on the solids: jig, router and cutter stand on the board as it is at that stage, at both stops and
 * half way.
 *
 * Nothing may cut into the work or what holds it but the cutter itself; rails, guide and bush touch what they bear on; what
 * the cutter sweeps from stop to stop is the mortise; the plate is held. A mortise no way can cut is told by
 * {@link heldMortises} and not tried here.
 */
export function dryRun(bench: Bench, held: Held): readonly Finding[] {
  const { kernel, design } = bench.solids;
  const layOut = setUpsOnSolids(
    kernel,
    design.boards.map(({ board }) => board),
    held,
  );
  const measured = new Map(
    bench.tenons.flatMap(({ mortises }) =>
      mortises.map((one): [string, MortiseMeasure] => [keyOf(one.board, one.mortise), one]),
    ),
  );
  const keyIn = toolsKey(bench, held);
  return held.holdings
    .filter((holding) => holding.broken.length === 0)
    .flatMap((holding) => {
      const mortise = measured.get(keyOf(holding.board, holding.mortise))!;
      return known(keyIn(holding, mortise), () => tried(bench, held, holding, layOut(holding), mortise));
    });
}

function tried(
  bench: Bench,
  held: Held,
  holding: Holding,
  setUp: SetUp | undefined,
  measured: MortiseMeasure,
): readonly Finding[] {
  if (!setUp) return [faceGone(holding)];
  if (setUp.travel < 0) return [stopsTooNear(bench, holding, setUp)];
  return [
    ...cutsInto(bench, holding, setUp),
    ...bearsOn(bench, holding, setUp),
    ...sweeps(bench, holding, setUp, measured),
    ...rests(bench, holding, setUp, held),
  ];
}

/** What a set-up was told depends on nothing but what is in its key: while one dimension is tried, most stay as they are. */
const known = remembered<readonly Finding[]>(500);

/** All that a set-up is tried with: the tools, its aids, the board, how it is held, and the air its mortise was found to have. */
function toolsKey({ say, solids }: Bench, held: Held): (holding: Holding, mortise: MortiseMeasure) => string {
  const aids = new Map(held.aids.map(({ board }) => [board.id, JSON.stringify(board)] as const));
  const boards = new Map(solids.design.boards.map(({ board }) => [board.id, JSON.stringify(board)] as const));
  const { design: drawn, ...jig } = held.jig;
  const tools = [say.rule, numberOf(drawn), JSON.stringify(jig), numberOf(held.shop)].join(' ');
  // wherever a holding names an aid, the aid itself
  const whole = (holding: Holding) =>
    JSON.stringify(holding, (_, value: unknown) => (typeof value === 'string' && aids.get(value)) || value);
  return (holding, { cavity }) =>
    [tools, numberOf(cavity.facets), boards.get(holding.board), whole(holding)].join(' ');
}

const keyOf = (board: string, mortise: Mortise): string => `${board} ${mortise.id}`;

const nameOf = ({ mortise, board }: Holding): string => `mortise ${mortise.id} in ${board}`;

const faceGone = (holding: Holding): Finding => ({
  code: 'set-up-face-gone',
  level: 'error',
  subjects: [holding.board, holding.mortise.id],
  measured: 0,
  limit: 1,
  unit: '',
  message: `${nameOf(holding)} is set up from a face that is not there yet, or no longer, at the stage '${holding.stage}'`,
  remedy: 'cut it at an earlier stage',
  basis: MEASURED,
});

const stopsTooNear = ({ say }: Bench, holding: Holding, { travel }: SetUp): Finding => ({
  code: 'stops-too-near',
  level: 'error',
  subjects: [holding.board, holding.mortise.id],
  measured: holding.stopDistance,
  limit: holding.stopDistance - travel,
  unit: 'mm',
  message: `${nameOf(holding)}: its stops stand ${say.length(holding.stopDistance)} from the centre and leave no room for the ${holding.travelling.what}, which reaches ${say.length(holding.stopDistance - travel)}`,
  remedy: 'set the stops to suit what travels between them',
  basis: MEASURED,
});

function cutsInto({ say }: Bench, holding: Holding, setUp: SetUp): Finding[] {
  const { travelling, fixed, travel } = setUp;
  const moving = travelling.flatMap((piece) => [-travel, 0, travel].map((x) => pushed(piece, [x, 0, 0])));
  const pairs = [
    ...moving.flatMap((one) => fixed.map((other) => [one, other] as const)),
    ...fixed.flatMap((one, i) => fixed.slice(i + 1).map((other) => [one, other] as const)),
  ];
  const worst = new Map<string, { one: Piece; other: Piece; shared: number }>();
  for (const [one, other] of pairs) {
    const shared = sharedBy(one, other);
    const key = `${one.name} ${other.name}`;
    if (shared > Math.max(OVERLAP_MM3, worst.get(key)?.shared ?? 0)) worst.set(key, { one, other, shared });
  }
  return [...worst.values()].map(
    ({ one, other, shared }): Finding => ({
      code: 'set-up-overlaps',
      level: 'error',
      subjects: [holding.board, holding.mortise.id, one.name, other.name],
      measured: shared,
      limit: 0,
      unit: 'mm³',
      message: `${nameOf(holding)}: in its set-up ${one.name} cuts ${say.volume(shared)} into ${other.name}`,
      remedy: 'cut it at an earlier stage, or hold it another way',
      basis: MEASURED,
    }),
  );
}

function bearsOn({ say }: Bench, holding: Holding, setUp: SetUp): Finding[] {
  return setUp.bearing.flatMap(([moves, on]): Finding[] => {
    const air = gapBetween(moves, on, 2 * BEARING_GAP);
    if (air < BEARING_GAP) return [];
    return [
      {
        code: 'set-up-off-bearing',
        level: 'error',
        subjects: [holding.board, holding.mortise.id, moves.name, on.name],
        measured: air,
        limit: BEARING_GAP,
        unit: 'mm',
        message: `${nameOf(holding)}: ${moves.name} must bear on ${on.name} but stands at least ${say.fine(air)} off it`,
        remedy: 'set it again: its distance and the face it is measured from do not agree',
        basis: MEASURED,
      },
    ];
  });
}

function below(body: Body, onFace: Vec3, normal: Vec3): Body {
  const left = belowFace(body, onFace, normal, -SKIN);
  body.delete();
  return left;
}

/** What the cutter sweeps between the stops against the air the finished board has there. */
function sweeps(bench: Bench, holding: Holding, setUp: SetUp, measured: MortiseMeasure): Finding[] {
  const { mortise, cavity, wall } = measured;
  // it runs into other air: the walls tell of that, and no cut of its own is like it
  if (wall === 0) return [];
  const whole = cavity.volume;
  const bound = sweptBound(setUp, mortise, cavity);
  if (bound !== undefined && bound <= CUT_RELATIVE * whole) return [];
  const { width, at } = mortise;
  const path = obround({ length: 2 * setUp.travel + width, width });
  const { kernel } = bench.solids;
  const sweep = (top: number) => prism(kernel, regionOf(path), -setUp.depth, top, setUp.place);
  const cut = mortise.faceNormal
    ? // what an earlier cut takes off above the mouth is not the mortise's
      below(sweep(CUTTER_LEAD), at.origin, mouthOf(mortise).normal)
    : sweep(-SKIN);
  const off = cut.volume() + whole - 2 * sharedVolume(cut, cavity.body());
  cut.delete();
  if (off <= CUT_RELATIVE * whole) return [];
  const { say } = bench;
  return [
    {
      code: 'cut-off-mortise',
      level: 'error',
      subjects: [holding.board, mortise.id],
      measured: off,
      limit: CUT_RELATIVE * whole,
      unit: 'mm³',
      message: `${nameOf(holding)}: what the cutter sweeps between its stops differs from the mortise by ${say.volume(off)} of ${say.volume(whole)}`,
      remedy: 'take the distances of rails, stops and centre line from the model again',
      basis: MEASURED,
    },
  ];
}

function rests({ say }: Bench, holding: Holding, setUp: SetUp, held: Held): Finding[] {
  const plane = { origin: [0, 0, -SECTION_BELOW], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] } as const;
  const travelling = holding.travelling.what === 'jig plate' ? plateOf(held.jig) : baseOf(held.shop.router);
  const blocks = setUp.fixed.filter(({ name }) => holding.supports.some(({ aid }) => aid === name));
  const wood: Region = unite(...[setUp.work, ...blocks].map(({ body }) => section(body(), plane)));
  const hold = holdOver(wood, travelling.outline, setUp.travel);
  // on the side of a rail the plate cannot tip: the rail's foot would have to swing into the work
  const least = Math.min(
    hold.start,
    hold.end,
    holding.near ? Number.POSITIVE_INFINITY : hold.near,
    holding.far ? Number.POSITIVE_INFINITY : hold.far,
  );
  if (least >= HOLD - HOLD_SLACK) return [];
  const [reach, needed] = say.lengths(Math.max(least, 0), HOLD);
  return [
    {
      code: 'plate-tips',
      level: 'error',
      subjects: [holding.board, holding.mortise.id],
      measured: least,
      limit: HOLD,
      unit: 'mm',
      message: `${nameOf(holding)}: the ${holding.travelling.what} is supported only ${reach} beyond the cutter's centre; it needs ${needed}`,
      remedy: 'clamp a support block there, flush with the mouth',
      basis: COMMON_PRACTICE,
    },
  ];
}
