import type { Board, FaceId, Mortise } from '../../board/index.js';
import type { Frame } from '../../frame/index.js';
import type { LineMarks } from './line-marks.js';
import type { StageName } from './stage.js';

/** What one rail of the jig bears on. Distances mm, from the cutter's centre, across the mortise. */
export interface RailBearing {
  /** Face of the board at its stage. */
  readonly face: FaceId;
  /** To the board's face, measured at the mouth. */
  readonly toFace: number;
  /** To the rail's inner face: the same, plus the wedge's thickness at the mouth. */
  readonly toRail: number;
  /** Wedge between rail and board, when the face does not run with the cutter. */
  readonly wedge?: WedgeUse;
}

/** A wedge as it is taped on: thick end up (towards the router), down, or at one end of the mortise's length. */
export interface WedgeUse {
  /** Board id of the wedge among the aids. */
  readonly aid: string;
  readonly angleDeg: number;
  /** `start` is the -x end of the mortise's frame. */
  readonly thickEnd: 'up' | 'down' | 'start' | 'end';
  /** At the mouth, half way along the mortise. */
  readonly thicknessAtMouth: number;
  /** Board frame: where the wedge sits, its own frame written in the board's. */
  readonly place: Frame;
}

/** How one mortise is held and guided. */
export interface Holding {
  readonly board: string;
  readonly mortise: Mortise;
  readonly stage: StageName;
  readonly way: 'both rails' | 'one rail' | 'guide board' | 'windowed template';
  /** Towards -y and +y of the mortise's frame; a missing one is taken off the jig. */
  readonly near?: RailBearing;
  readonly far?: RailBearing;
  /** For a guide board: its working edge from the mortise's centre line, on the -y or +y side. */
  readonly guide?: {
    readonly aid: string;
    readonly offset: number;
    readonly side: 'near' | 'far';
    /** Board frame. */
    readonly place: Frame;
  };
  /** For a windowed template: the opening, and the bush it is cut for. */
  readonly window?: {
    readonly aid: string;
    readonly length: number;
    readonly width: number;
    readonly bush: number;
    /** Board frame. */
    readonly place: Frame;
  };
  /** The mortise's middle, along its length, from a named face; measured in the plane of the mouth. */
  readonly along: FromFace;
  /** Centre line across the mortise, from a face that runs along it: for a guide board or a template. */
  readonly across?: FromFace;
  /** Instead of `across` when none does: the lines to set a guide board or a template by, each by two marks on arrises. */
  readonly marked?: { readonly centreLine: LineMarks; readonly guideEdge?: LineMarks };
  /** What travels against the stops, along the mortise: the jig's plate or the router's base. */
  readonly travelling: { readonly what: 'jig plate' | 'router base'; readonly along: number };
  /** Stops from the mortise's centre: L/2 + B/2 - d/2. */
  readonly stopDistance: number;
  /** How far the -x and the +x stop stand beyond the wood and its support blocks; 0 when they stand on it. */
  readonly stopsBeyond: readonly [start: number, end: number];
  /** Board id of the block whose thickness is the mortise's depth. */
  readonly depthBlock: string;
  /** Support blocks clamped beside the board, flush with the mouth face. */
  readonly supports: readonly SupportUse[];
  /** Extra length to leave on the blank beyond an end until the mortise is cut. */
  readonly horn?: { readonly end: FaceId; readonly length: number };
  /** How far the board must stand off the bench beside the rails; 0 when it is deeper than they are high. */
  readonly raised: number;
  /** Simpler ways that were passed over, each with the limits that forbid it. */
  readonly refused: readonly Refusal[];
  /** Limits of the jig or router this mortise breaks, and what would cure it; empty when it can be cut. */
  readonly broken: readonly BrokenLimit[];
}

/** A distance from a face of the board at its stage, mm. */
export interface FromFace {
  readonly from: FaceId;
  /** Which side of the mortise that face is on: `start` and `end` are its -x and +x, `near` and `far` its -y and +y. */
  readonly side: 'start' | 'end' | 'near' | 'far';
  readonly centre: number;
}

/** A way to hold a mortise that some limit forbids. */
export interface Refusal {
  readonly way: Holding['way'];
  readonly wedged: boolean;
  readonly stage: StageName;
  readonly broken: readonly BrokenLimit[];
}

export interface SupportUse {
  readonly aid: string;
  /** Board frame: where the block stands, its own frame written in the board's. */
  readonly place: Frame;
  readonly why: string;
}

/** Stable names of what jig, router and cutter cannot do. */
export type LimitCode =
  | 'grip-too-wide'
  | 'grip-too-narrow'
  | 'rail-reach'
  | 'rail-near-cutter'
  | 'plunge-travel'
  | 'cutting-length'
  | 'cutter-length'
  | 'guide-wood'
  | 'template-meets-work'
  | 'plate-meets-work'
  | 'base-meets-work';

export interface BrokenLimit {
  readonly code: LimitCode;
  readonly measured: number;
  readonly limit: number;
  readonly message: string;
  readonly remedy: string;
}

/** A piece made to hold or guide the work: a board like any other, with what it is for. */
export interface Aid {
  readonly board: Board;
  readonly kind:
    | 'wedge'
    | 'support block'
    | 'depth block'
    | 'guide board'
    | 'windowed template'
    | 'clamp pad';
  /** `10° wedge, for the mortises in both side tops`. */
  readonly purpose: string;
  readonly count: number;
  /** Left and right ones are made mirrored. */
  readonly handed: boolean;
}
