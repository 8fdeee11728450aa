import type { Frame } from '../frame/index.js';

/** A separate tenon: a strip with rounded edges (radius = half its thickness), glued into a mortise in each board. mm. */
export interface Tenon {
  readonly id: string;
  /** Assembly frame: origin on the seat, x along the width, y through the thickness, z along the length from a into b. */
  readonly place: Frame;
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  /** How far it reaches into each board; length = intoA + intoB. */
  readonly intoA: number;
  readonly intoB: number;
}

/** The fit asked for; mm. */
export interface Fit {
  /** Air between tenon and mortise on each cheek. */
  readonly cheek: number;
  /** Mortise length less tenon width, both ends together. */
  readonly edge: number;
  /** Air at each end of the tenon. */
  readonly end: number;
}

/** Two boards held by loose tenons at one seat. */
export interface Joint {
  readonly id: string;
  /** Board ids. */
  readonly a: string;
  readonly b: string;
  /** Assembly frame: origin in the middle of the patch on which the boards touch, x along the mortises' length, z from a into b. */
  readonly seat: Frame;
  readonly contactAreaMm2: number;
  readonly cutter: number;
  readonly fit: Fit;
  /** Least wood asked for between a mortise's end and the edge of the seat. */
  readonly endInset: number;
  /** Least wood asked for between two mortises in its row. */
  readonly web: number;
  /** Thickness of the thinner board. */
  readonly thinner: number;
  readonly tenons: readonly Tenon[];
}
