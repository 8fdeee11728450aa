import type { Rule } from '../../length/index.js';

/** What the preview page shows, as plain JSON. Lengths mm, assembly frame; Z up. */
export interface PreviewData {
  readonly title: string;
  readonly revision: string;
  /** What lengths are told in, and how fine. */
  readonly units: Rule;
  /** The whole: width, depth, height. */
  readonly box: PreviewBox;
  readonly pieces: readonly PreviewPiece[];
  readonly joints: readonly PreviewJoint[];
  /** Tenons that are glued into a board before boards are brought together. */
  readonly first: readonly PreviewStep[];
  readonly steps: readonly PreviewStep[];
  readonly findings: readonly PreviewFinding[];
  /** How it stands on the floor; left out when nothing says what its surfaces are for. */
  readonly stands?: PreviewStanding;
  readonly cautions: readonly string[];
}

/** The line round the feet, and where the piece tips first. */
export interface PreviewStanding {
  readonly feet: readonly Point[];
  readonly first?: {
    readonly at: Point;
    /** The end of an arrow the way it goes over. */
    readonly to: Point;
    readonly text: string;
  };
}

export type Point = readonly [x: number, y: number, z: number];

/** A box whose sides are told: a board's blank, a tenon, the whole. */
export interface PreviewBox {
  readonly corner: Point;
  readonly sides: readonly [PreviewSide, PreviewSide, PreviewSide];
}

export interface PreviewSide {
  readonly name: string;
  readonly mm: number;
  /** Unit, from the corner. */
  readonly along: Point;
  /** In millimetres, and in inches. */
  readonly mmText: string;
  readonly inchText: string;
}

export interface PreviewPiece {
  readonly id: string;
  readonly name: string;
  readonly role: 'board' | 'tenon' | 'hardware';
  readonly colour: string;
  readonly note: string;
  readonly box?: PreviewBox;
  /** Wood that grew: its grain runs along the first side of its box. */
  readonly grain?: true;
  /** Base64 of little-endian float32 triples. */
  readonly positions: string;
  /** Base64 of little-endian numbers of corners, in triples and pairs; of two bytes each where `wide` is false. */
  readonly triangles: string;
  readonly edges: string;
  readonly wide: boolean;
  /** Where it goes when drawn apart. */
  readonly apart: Point;
}

export interface PreviewJoint {
  readonly id: string;
  readonly name: string;
  readonly tenons: readonly string[];
  /** Measured on the solids. */
  readonly clearances: readonly { readonly name: string; readonly text: string }[];
}

export interface PreviewStep {
  readonly text: string;
  /** Pieces in hand, brought to those that stand. */
  readonly moving: readonly string[];
  readonly direction: Point;
  /** How far off it starts, mm. */
  readonly back: number;
}

export interface PreviewFinding {
  readonly level: 'error' | 'warning' | 'note';
  readonly text: string;
  readonly remedy: string;
  readonly basis: string;
  readonly pieces: readonly string[];
  /** The place, and how far round it is to be looked. */
  readonly at: Point;
  readonly round: number;
  /** What was measured there: from one spot to the other. */
  readonly gap?: { readonly from: Point; readonly to: Point; readonly text: string };
}
