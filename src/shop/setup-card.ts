import type { FaceId } from '../board/index.js';
import type { BrokenLimit, StageName, WedgeUse } from './holding.js';
import type { Verdict } from './shop.js';

/** One set-up of router and jig, and every mortise cut with it. Lengths mm, exact; papers round. */
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
  readonly depthBlock: string;
  /** Where the cutter touches when depth is zeroed. */
  readonly zeroPoint: string;
  readonly nearRail: RailSetting | undefined;
  readonly farRail: RailSetting | undefined;
  readonly guideOffset: number | undefined;
  readonly window: { readonly aid: string; readonly bush: number } | undefined;
  readonly stopDistance: number;
  readonly travelling: { readonly what: 'jig plate' | 'router base'; readonly along: number };
  readonly passes: readonly Pass[];
  /** Where the cutter is plunged, measured from the centre line, in order: both ends first, then between. */
  readonly plunges: readonly number[];
  readonly feed: string;
  readonly speedLimitRpm: number | undefined;
  readonly figures: readonly Figure[];
  readonly cuts: readonly CardCut[];
  readonly aids: readonly string[];
  readonly cautions: readonly string[];
  readonly broken: readonly BrokenLimit[];
}

/** From the cutter's centre to the rail's inner face. */
export interface RailSetting {
  readonly distance: number;
  readonly wedge: WedgeUse | undefined;
}

export interface Pass {
  readonly number: number;
  /** Below the zero point. */
  readonly depth: number;
  /** Which turret step gives it, counted from the lowest; undefined when the shop file does not say. */
  readonly turretStep: number | undefined;
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
  /** Centre line and both end marks along the mortise, from a named face that is square to its length. */
  readonly from: FaceId;
  readonly centre: number;
  readonly ends: readonly [number, number];
  /** For a guide board or template: the mortise's centre line across, from a named face. */
  readonly across: { readonly from: FaceId; readonly centre: number } | undefined;
}
