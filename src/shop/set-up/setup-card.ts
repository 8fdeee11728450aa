import type { FaceId } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import type { Region } from '../../profile/index.js';
import type { Verdict } from '../at-hand/index.js';
import type { LineMarks, StageName, WedgeUse } from '../holding/index.js';

/**
 * One set-up of router and jig, and every mortise cut with it. Lengths mm, exact; papers round.
 *
 * The near rail is the one towards the person. Turning the work end for end in the jig swaps what the rails bear on, so that
 * left and right boards share a set-up.
 */
export interface SetupCard {
  /** `S1`, `S2` … in the order they are cut. */
  readonly id: string;
  readonly stage: StageName;
  readonly way: 'both rails' | 'one rail' | 'guide board' | 'windowed template';
  readonly cutter: number;
  /** Width the cutter really cuts here, from the test slot or its measured diameter; the nominal when neither is known. */
  readonly slotWidth: number;
  readonly mortiseLength: number;
  readonly depth: number;
  /** Id of the block among the aids whose thickness is the depth. */
  readonly depthBlock: string;
  /** Where the cutter touches when depth is zeroed. */
  readonly zeroPoint: string;
  readonly nearRail: RailSetting | undefined;
  readonly farRail: RailSetting | undefined;
  /** From the guide's working edge to the mortise's centre line; the guide lies on the far side. */
  readonly guideOffset: number | undefined;
  readonly window: { readonly aid: string; readonly bush: number } | undefined;
  readonly stopDistance: number;
  readonly travelling: { readonly what: 'jig plate' | 'router base'; readonly along: number };
  /** How far the work must stand off the bench beside the rails. */
  readonly raised: number;
  /** How far a stop stands beyond the wood at most. */
  readonly stopsBeyond: number;
  readonly passes: readonly Pass[];
  /** Where the cutter is plunged, measured from the centre line, in order: both ends first, then between. */
  readonly plunges: readonly number[];
  /** Between two plunges, after all are made. */
  readonly plungeSpacing: number;
  readonly feed: string;
  readonly speedLimitRpm: number | undefined;
  readonly testCut: TestCut;
  readonly figures: readonly Figure[];
  readonly cuts: readonly CardCut[];
  readonly aids: readonly string[];
  readonly cautions: readonly string[];
}

/** From the cutter's centre to the rail's inner face. */
export interface RailSetting {
  readonly distance: number;
  /** From the cutter's centre to the work's face, at the mouth: less than the distance when a wedge stands between. */
  readonly toWork: number;
  readonly wedge: Omit<WedgeUse, 'place'> | undefined;
}

export interface Pass {
  readonly number: number;
  /** Below the zero point. */
  readonly depth: number;
  /** Which turret step gives it, counted from the lowest, which is 1; undefined when no step of the shop file does. */
  readonly turretStep: number | undefined;
  /** For a pass no step gives: what lies under the stop rod, on which step (1 the lowest), and about how thick. */
  readonly spacer: { readonly onStep: number; readonly thickness: number } | undefined;
}

/** A shallow slot in an offcut as thick as the board, before the first mortise. */
export interface TestCut {
  readonly depth: number;
  /** Wood that must stand between the slot and the near and the far rail's face; undefined where no rail bears. */
  readonly nearWall: number | undefined;
  readonly farWall: number | undefined;
  readonly correction: string;
  /** Faces of the blank that are sawn out of square first, as the work's are where a wedge holds it; empty without a wedge. */
  readonly sawnFirst: readonly string[];
}

/** A figure that is checked against the shop: `cutter reaches`, `plunge travel`. */
export interface Figure {
  readonly name: string;
  readonly needed: number;
  readonly available: number | undefined;
  readonly verdict: Verdict;
  readonly text: string;
}

/** One mortise on the card, told by what a rule on the bench measures. */
export interface CardCut {
  readonly board: string;
  readonly hand: 'left' | 'right' | undefined;
  readonly mortise: string;
  /** The face the plate lies on. */
  readonly face: FaceId;
  /** What the near and the far rail bear on. */
  readonly nearFace: FaceId | undefined;
  readonly farFace: FaceId | undefined;
  /**
   * Centre line and both end marks along the mortise, from a named face. Measured in the plane of the mouth along the centre
   * line, so that a face out of square to it serves as well.
   */
  readonly from: FaceId;
  /** Degrees between that face and one square to the mortise; 0 when it is square. */
  readonly outOfSquareDeg: number;
  /** Extra length left beyond that end, which `centre` and `ends` are measured over: they start from the horn's end. */
  readonly horn: number;
  readonly centre: number;
  readonly ends: readonly [number, number];
  /** For a guide board or template: the mortise's centre line across, from a named face or the end of the horn beyond it. */
  readonly across: { readonly from: FaceId; readonly horn: number; readonly centre: number } | undefined;
  /** Where a guide board's working edge lies, from the same face; below 0 outside the board. */
  readonly guideEdge: number | undefined;
  /** For a guide board: the edge the router's own edge guide may run along instead, and how far its fence is set. */
  readonly edgeGuide: EdgeGuide | undefined;
  /** Instead of both when no edge runs along the mortise: its lines by marks on the arrises, and the mouth to draw them on. */
  readonly marked: MarkedOut | undefined;
}

/** The router's own edge guide, its fence set from the cutter's centre. */
export interface EdgeGuide {
  readonly face: FaceId;
  readonly distance: number;
}

/** The lines of a mortise turned against its board's edges. */
export interface MarkedOut {
  /** Between the mortise's length and the grain, 0 to 90 degrees. */
  readonly turnDeg: number;
  /** `from`, `centre` and `ends` of the cut are measured along it from its first mark. */
  readonly centreLine: LineMarks;
  /** Undefined for a template, and where the guide's edge does not lie over the mouth's face. */
  readonly guideEdge: LineMarks | undefined;
  /** The mouth's face and the lines on it seen from above, the grain to the right; mm. */
  readonly drawn: {
    readonly mouth: Region;
    /** Unit: along the mortise, whose middle is the origin. */
    readonly along: Vec2;
    /** Where the marks of each line lie, in their order. */
    readonly centreLine: readonly [Vec2, Vec2];
    readonly guideEdge: readonly [Vec2, Vec2] | undefined;
  };
}
