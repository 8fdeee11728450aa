import type { ErrorText } from '../errors.js';
import type { Frame } from '../frame/index.js';
import type { Meet } from './options.js';

/** A tenon's end cut at an angle, because another tenon comes to meet it. mm, degrees. */
export interface MitredEnd {
  /** Out of square, about the tenon's width. */
  readonly angleDeg: number;
  /** The cheek of the long point: 1 the one the tenon's y points to, -1 the other. */
  readonly long: 1 | -1;
  /** The joint whose tenons it meets. */
  readonly meets: string;
  /** Least air between the two ends; more where a depth that is told ends a tenon sooner. */
  readonly gap: number;
}

/** A separate tenon: a strip with rounded edges (radius = half its thickness), glued into a mortise in each board. mm. */
export interface Tenon {
  readonly id: string;
  /** Assembly frame: origin on the seat, x along the width, y through the thickness, z along the length from a into b. */
  readonly place: Frame;
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  /** How far it reaches into each board, to its long point; length = intoA + intoB. */
  readonly intoA: number;
  readonly intoB: number;
  /** Ends that are not square. */
  readonly mitreA?: MitredEnd;
  readonly mitreB?: MitredEnd;
}

/** How much shorter a mitred end is at its short point, mm; 0 for a square one. */
export const shortBy = ({ thickness }: Tenon, mitre: MitredEnd | undefined): number =>
  mitre ? thickness * Math.tan((mitre.angleDeg * Math.PI) / 180) : 0;

/** The length a tenon's two cheeks have on the average, mm: what glue holds on. */
export const meanLength = (tenon: Tenon): number =>
  tenon.length - (shortBy(tenon, tenon.mitreA) + shortBy(tenon, tenon.mitreB)) / 2;

/**
 * The shape of a tenon's ends as words of a file name: empty for square ones, `mitred-45`, `mitred-45-45`, and
 * `mitred-45-45-slanted` where the long points lie on opposite cheeks. Turned over or end for end it is the same.
 */
export function endsShape({ mitreA, mitreB }: Tenon): string {
  const ends = [mitreA, mitreB].filter((end) => end !== undefined);
  if (ends.length === 0) return '';
  const angles = ends.map(({ angleDeg }) => Math.round(angleDeg * 10) / 10).toSorted((p, q) => p - q);
  const slanted = mitreA && mitreB && mitreA.long !== mitreB.long;
  return ['mitred', ...angles, ...(slanted ? ['slanted'] : [])].join('-');
}

/** What a joint gave up for something that was in its way in one of its boards. */
export interface GaveWay {
  readonly board: string;
  /** The other joint, or the cut: `joint left-apron/leg`, `hole bolt`. */
  readonly to: string;
  readonly way: Meet | 'move';
  /** Depth of its mortises in that board and length of each, before and after, mm. */
  readonly before: { readonly depth: number; readonly length: number };
  readonly after: { readonly depth: number; readonly length: number };
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
  /** Of the rectangle round the patch, along the mortises and across. */
  readonly shoulder: { readonly length: number; readonly width: number };
  readonly cutter: number;
  readonly fit: Fit;
  /** Least wood asked for between a mortise's end and the edge of the seat. */
  readonly endInset: number;
  /** Least wood asked for between two mortises in its row. */
  readonly web: number;
  /** Thickness of the thinner board. */
  readonly thinner: number;
  /** Rows of tenons through the thickness; 1 when left out. */
  readonly rows?: number;
  readonly tenons: readonly Tenon[];
  /** What they are cut from; left out where both boards are sheet goods and nothing was told. */
  readonly tenonWood?: string;
  /** Left out when nothing was in its way. */
  readonly gaveWay?: readonly GaveWay[];
}

/** A patch on which two boards touch and that got no tenon. */
export interface PatchLeft {
  readonly joint: string;
  readonly a: string;
  readonly b: string;
  readonly areaMm2: number;
  /** Of the rectangle round it, mm. */
  readonly length: number;
  readonly width: number;
  readonly why: ErrorText;
}
