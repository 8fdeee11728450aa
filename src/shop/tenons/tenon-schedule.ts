import type { Design } from '../../assembly/index.js';
import type { Board, Mortise } from '../../board/index.js';
import { endsShape, type Joint, meanLength, type Tenon } from '../../joinery/index.js';
import type { Say } from '../../length/index.js';
import { COPLANAR, SAME_POINT } from '../../tolerances.js';
import type { Shop } from '../at-hand/index.js';
import { STOCK_PRACTICE } from '../practice/index.js';
import { markOf } from '../words/index.js';
import { type SlotGrain, type SlotWidth, slotWidthOf } from './slot-width.js';
import { type TenonEdge, tenonEdges } from './tenon-edges.js';
import { mitreWords, type TenonMitre, tenonMitres } from './tenon-mitres.js';
import { type Grooves, groovesOf, type Relief, reliefOf } from './tenon-relief.js';

/** All tenons of one size. Lengths mm, exact. */
export interface TenonKind {
  /** `T1`, `T2` …: written on the tenons. */
  readonly mark: string;
  readonly count: number;
  readonly joints: readonly { readonly joint: string; readonly count: number }[];
  readonly material: string;
  readonly cutter: number;
  readonly slot: SlotWidth;
  /** Both cheeks together: what the slot is wider than the tenon. */
  readonly clearance: number;
  /** To mill: slot less clearance. */
  readonly thickness: number;
  /** What the solids were made with: from the nominal cutter. */
  readonly drawnThickness: number;
  readonly width: number;
  readonly length: number;
  readonly mortiseLength: number;
  /** How far it goes into each board, and what is left below its end. */
  readonly ends: readonly TenonEnd[];
  /** Ends that are not square; of the first tenon of the kind. */
  readonly mitres: readonly TenonMitre[];
  /** How each of its ends is cut and turned, joint by joint; empty when both are square. */
  readonly mitreNotes: readonly string[];
  readonly edges: readonly TenonEdge[];
  readonly reliefs: readonly Relief[];
  readonly grooves: Grooves;
  readonly grain: 'along the length';
  readonly slack: readonly AlignmentSlack[];
  readonly fit: TestFit;
  /** What the person should know before milling; empty when all is well. */
  readonly warnings: readonly string[];
}

export interface TenonEnd {
  readonly board: string;
  readonly into: number;
  readonly depth: number;
  readonly grain: SlotGrain;
}

/** An offer: one of a joint's two mortises made longer, so that a rail can be nudged level. */
export interface AlignmentSlack {
  readonly joint: string;
  /** Board whose mortise keeps its length. */
  readonly exactIn: string;
  /** Board whose mortise may be longer. */
  readonly longerIn: string;
  readonly length: number;
  /** Wood kept past the mortise at each end of the seat, and what is left of it. */
  readonly endWood: number;
  readonly endWoodLeft: number;
}

/** The words of the test fit. */
export interface TestFit {
  readonly go: string;
  readonly noGo: string;
}

/** Common practice in many shops, no source. */
const FIT: TestFit = {
  go: 'goes in dry by hand pressure alone, and does not fall out when you turn the board over',
  noGo: 'needs a mallet (too thick: it scrapes the glue off and may split the board), or drops out (too thin: glue does not bridge the gap)',
};

/**
 * The tenons of a design, those of one size together.
 *
 * @param shop its cutters' measured slots give the thickness; without them it is the nominal one, `not verified`
 */
export function tenonSchedule(design: Design, shop: Shop, say: Say): readonly TenonKind[] {
  const boards = new Map(design.boards.map(({ board }) => [board.id, board]));
  const kinds: Placed[][] = [];
  for (const joint of design.joints) {
    for (const tenon of joint.tenons) {
      const placed = place(joint, tenon, boards);
      const same = kinds.find((kind) => oneSize(kind[0]!, placed));
      if (same) same.push(placed);
      else kinds.push([placed]);
    }
  }
  return kinds.map((kind, i) => kindOf(markOf('tenon', i), kind, boards, design.joints, shop, say));
}

interface Placed {
  readonly joint: Joint;
  readonly tenon: Tenon;
  readonly material: string;
  /** In a, in b. */
  readonly mortises: readonly [Mortise, Mortise];
}

function place(joint: Joint, tenon: Tenon, boards: ReadonlyMap<string, Board>): Placed {
  const pair = [joint.a, joint.b].map((id) => boards.get(id)!);
  const [a, b] = pair.map((board) => board.mortises.find((one) => one.tenon === tenon.id)!);
  return {
    joint,
    tenon,
    material: joint.tenonWood ?? 'straight-grained hardwood',
    mortises: [a!, b!],
  };
}

const sizes = ({ joint, tenon, mortises }: Placed): readonly number[] => [
  tenon.thickness,
  tenon.width,
  tenon.length,
  joint.cutter,
  mortises[0].length,
];

const oneSize = (one: Placed, other: Placed): boolean => {
  const others = sizes(other);
  return (
    one.material === other.material &&
    endsShape(one.tenon) === endsShape(other.tenon) &&
    sizes(one).every((size, i) => Math.abs(size - others[i]!) < COPLANAR) &&
    grainsOf(one).join() === grainsOf(other).join()
  );
};

/** Which kinds of grain a tenon meets, in a fixed order. */
const grainsOf = ({ mortises }: Placed): readonly SlotGrain[] =>
  (['face grain', 'end grain'] as const).filter((grain) => mortises.some((one) => grainOf(one) === grain));

/** End grain where the axis runs more along the board than across it. */
const grainOf = (mortise: Mortise): SlotGrain =>
  Math.abs(mortise.at.z[0]) > Math.SQRT1_2 - SAME_POINT ? 'end grain' : 'face grain';

function kindOf(
  mark: string,
  kind: readonly Placed[],
  boards: ReadonlyMap<string, Board>,
  joints: readonly Joint[],
  shop: Shop,
  say: Say,
): TenonKind {
  const first = kind[0]!;
  const { joint, tenon, mortises } = first;
  const slot = slotWidthOf(shop, joint.cutter, grainsOf(first), say);
  const clearance = joint.cutter - tenon.thickness;
  const thickness = slot.width - clearance;
  const mortiseLength = Math.min(mortises[0].length, mortises[1].length);
  const sizes = { thickness, width: tenon.width, length: tenon.length };
  const names = [...new Set(kind.map((one) => one.joint.id))];
  const ends = endsOf(first);
  const mitresOf = (one: Placed) => tenonMitres(one.joint, one.tenon, joints);
  const reliefs = ends.map((end, i) =>
    reliefOf({
      board: end.board,
      thickness,
      width: tenon.width,
      into: end.into,
      mortise: { width: slot.width, length: mortises[i]!.length, depth: end.depth },
    }),
  );
  return {
    mark,
    count: kind.length,
    joints: names.map((name) => ({
      joint: name,
      count: kind.filter((one) => one.joint.id === name).length,
    })),
    material: first.material,
    cutter: joint.cutter,
    slot,
    clearance,
    ...sizes,
    drawnThickness: tenon.thickness,
    mortiseLength,
    ends,
    mitres: mitresOf(first),
    mitreNotes: names.flatMap((name) =>
      mitresOf(kind.find((one) => one.joint.id === name)!).map(
        (mitre) => `joint ${name}: ${mitreWords(mitre, say)}`,
      ),
    ),
    edges: tenonEdges({ ...sizes, length: meanLength(tenon), mortiseWidth: slot.width, mortiseLength }),
    reliefs,
    grooves: groovesOf(tenon.width, thickness),
    grain: 'along the length',
    slack: names.map((name) => slackOf(kind.find((one) => one.joint.id === name)!, boards)),
    fit: FIT,
    warnings: [
      ...(slot.warning === undefined ? [] : [slot.warning]),
      ...(reliefs.some((relief) => relief.closed)
        ? [
            `tenon ${mark}: its rounded edges fill the ends of the mortise and trap air: groove both cheeks, or make it narrower than ${say.fine(mortiseLength - 2 * clearance)}`,
          ]
        : []),
    ],
  };
}

const endsOf = ({ joint, tenon, mortises: [a, b] }: Placed): readonly TenonEnd[] => [
  { board: joint.a, into: tenon.intoA, depth: a.depth, grain: grainOf(a) },
  { board: joint.b, into: tenon.intoB, depth: b.depth, grain: grainOf(b) },
];

/** The rail keeps its length: the board cut into end grain, else the longer one. */
function slackOf(placed: Placed, boards: ReadonlyMap<string, Board>): AlignmentSlack {
  const { joint } = placed;
  const [a, b] = endsOf(placed);
  const length = ({ board }: TenonEnd) => boards.get(board)!.blank.length;
  const railIsB = a!.grain === b!.grain ? length(b!) > length(a!) : b!.grain === 'end grain';
  const slack = STOCK_PRACTICE.alignmentSlack;
  return {
    joint: joint.id,
    exactIn: railIsB ? b!.board : a!.board,
    longerIn: railIsB ? a!.board : b!.board,
    length: slack,
    endWood: joint.endInset,
    endWoodLeft: joint.endInset - slack / 2,
  };
}
