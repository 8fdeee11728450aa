import { area, obround } from '../../profile/index.js';
import { SAME_POINT } from '../../tolerances.js';
import { STOCK_PRACTICE } from '../practice/index.js';

/** Where the air and the surplus glue of one end of a tenon go. */
export interface Relief {
  /** Board the end goes into. */
  readonly board: string;
  /** Air that the tenon's end pushes out of the mortise: its own volume, mm³. */
  readonly displacedMm3: number;
  /** Open section between tenon and mortise, round edges, mm². */
  readonly gapAreaMm2: number;
  /** Room beside the tenon and below its end, that glue can fill, mm³. */
  readonly roomBesideMm3: number;
  readonly roomBelowMm3: number;
  /** True when the edges leave no more than the cheeks do: the mortise is then a closed pump. */
  readonly closed: boolean;
}

/** Shallow grooves along the cheeks, from end to end. */
export interface Grooves {
  readonly perCheek: number;
  readonly width: number;
  readonly depth: number;
  /** Section of all of them together, mm². */
  readonly areaMm2: number;
}

/** Sizes of one end of a tenon and its mortise, mm. */
export interface ReliefRequest {
  readonly board: string;
  readonly thickness: number;
  readonly width: number;
  /** How far the tenon goes in. */
  readonly into: number;
  readonly mortise: { readonly width: number; readonly length: number; readonly depth: number };
}

/**
 * The air and glue figures of one end.
 *
 * The gap's section is the mortise's area less the tenon's; for one clearance c all round this is P·c − π·c², P the
 * mortise's perimeter (Steiner's formula for parallel curves).
 */
export function reliefOf({ board, thickness, width, into, mortise }: ReliefRequest): Relief {
  const mouth = area(obround({ length: mortise.length, width: mortise.width }));
  const tenon = area(obround({ length: width, width: thickness }));
  const gap = mouth - tenon;
  return {
    board,
    displacedMm3: tenon * into,
    gapAreaMm2: gap,
    roomBesideMm3: gap * into,
    roomBelowMm3: mouth * (mortise.depth - into),
    closed: mortise.length - width <= mortise.width - thickness + SAME_POINT,
  };
}

/** Grooves for a tenon of this width: one on each cheek, two on a wide one. */
export function groovesOf(width: number, thickness: number): Grooves {
  const { wideTenon, width: usual, depth: deep } = STOCK_PRACTICE.groove;
  const perCheek = width >= wideTenon ? 2 : 1;
  const [each, depth] = [Math.min(usual, width / 4), Math.min(deep, thickness / 6)];
  return { perCheek, width: each, depth, areaMm2: 2 * perCheek * each * depth };
}
