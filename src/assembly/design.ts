import type { Frame, Vec3 } from '../frame/index.js';
import type { Joint, PatchLeft } from '../joinery/index.js';
import type { Profile } from '../profile/index.js';
import type { Captive } from './captive.js';
import type { Fastening } from './fastening.js';
import type { Mechanism } from './mechanism.js';
import type { PlacedBoard } from './placed-board.js';
import type { SurfaceUse, User } from './use.js';

/** A layer of a piece of hardware: `outline` less `bores`, from z = from to z = to; scaled to `endScale` at `to`. */
export interface Stage {
  readonly outline: Profile;
  readonly bores?: readonly Profile[];
  readonly from: number;
  readonly to: number;
  readonly endScale?: number;
}

export type HardwareKind = 'bolt' | 'washer' | 'knob' | 'screw' | 'button' | 'router base' | 'cutter';

/** A bought or given piece, modelled closely enough to take part in the checks. */
export interface Hardware {
  readonly id: string;
  readonly kind: HardwareKind;
  /** As it is asked for over the counter: `hex bolt M8 × 60, ISO 4014`. */
  readonly name: string;
  /** Stacked along z of the place frame. */
  readonly stages: readonly Stage[];
  readonly place: Frame;
  /** False for what the person already owns (the router, its cutter). */
  readonly bought: boolean;
}

/** A figure the model worked out, to be told to the person. */
export interface Derived {
  readonly name: string;
  readonly value: number;
  readonly unit: 'mm' | 'deg' | '';
  readonly help: string;
}

/** One thing done when the boards are made and nothing is glued; `what` without lengths, which are the figures. mm, degrees. */
export interface AssemblyStep {
  readonly kind: 'fix' | 'assemble' | 'test cut';
  readonly what: string;
  readonly figures: readonly { readonly name: string; readonly value: number; readonly unit: 'mm' | 'deg' }[];
}

/** Boards placed in space, and joints between boards that touch: the one source everything else is derived from. */
export interface Design {
  /** Folder name: `stool`. */
  readonly name: string;
  readonly title: string;
  /** The diameter of the cutter the outlines are followed with, mm. */
  readonly cutter: number;
  readonly boards: readonly PlacedBoard[];
  readonly joints: readonly Joint[];
  /** Where boards that are joined touch as well and have no tenon; none when left out. */
  readonly patchesLeft?: readonly PatchLeft[];
  readonly hardware: readonly Hardware[];
  /** Panels held in grooves, not glued; none when left out. */
  readonly captives?: readonly Captive[];
  /** Boards held to each other without glue; none when left out. */
  readonly fastenings?: readonly Fastening[];
  /** What its surfaces are for; of a surface that is not named nothing is asked. */
  readonly uses?: readonly SurfaceUse[];
  /** Who uses it; an adult when left out. */
  readonly user?: User;
  /** Of a design with moving pieces, such as a jig; a piece of furniture has none. */
  readonly mechanism?: Mechanism;
  /** How boards that are not glued become the whole, in order. */
  readonly putTogether?: readonly AssemblyStep[];
  readonly derived: readonly Derived[];
  /** Where a piece goes in the exploded view, mm, when no joint says it. */
  readonly explode?: Readonly<Record<string, Vec3>>;
  /** Sentences for the person: assumptions and choices the model made. */
  readonly notes: readonly string[];
}
