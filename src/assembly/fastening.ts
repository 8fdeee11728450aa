import type { Frame, Vec3 } from '../frame/index.js';

/** Boards to be held together without glue, so that one of them can move; lengths mm. */
export interface FastenRequest {
  /** The board that moves, by id: a table top. */
  readonly held: string;
  /** The board it is fastened to: an apron. */
  readonly to: string;
  /** Buttons in a groove or in slots of their own, or screws in slotted holes through `to`. */
  readonly by: 'button' | 'screw';
  /** How many; as many as no more than 300 apart when left out. */
  readonly count?: number;
  /**
   * How far the held board moves here over a year, from end to end of its travel; when left out what the part of its width
   * between here and its middle moves, see {@link seasonalMovement}.
   */
  readonly travel?: number;
  /** Diameter of the screws. */
  readonly screw?: 3.5 | 4 | 4.5 | 5;
  /** Length of the screws; the longest usual one that leaves wood under the show face when left out. */
  readonly screwLength?: number;
  /** From the seat to the upper wall of a button's slot. */
  readonly slotBelow?: number;
  readonly slotWidth?: number;
  readonly slotDepth?: number;
  /** How far a button's tongue reaches into its slot; as far as its travel lets it when left out. */
  readonly tongue?: number;
}

/** One place where a board is held to another without glue. Assembly frame, mm. */
export interface Fastening {
  /** `top/front-apron:1`. */
  readonly id: string;
  readonly by: 'button' | 'screw';
  readonly held: string;
  readonly to: string;
  /** On the plane where the boards touch, z from `to` into `held`: the way the screw goes in. */
  readonly at: Frame;
  /** The way the held board moves, unit, and how far from end to end. */
  readonly along: Vec3;
  readonly travel: number;
  readonly screw: { readonly id: string; readonly diameter: number; readonly length: number };
  /** The other pieces that go with it: a button, a washer. */
  readonly with: readonly string[];
  /** Of a button. */
  readonly tongue?: { readonly reach: number; readonly thickness: number };
}
