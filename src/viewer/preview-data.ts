/** What the preview page shows, as plain JSON. Lengths mm, assembly frame; Z up. */
export interface PreviewData {
  readonly title: string;
  readonly revision: string;
  /** Overall box. */
  readonly min: Point;
  readonly max: Point;
  readonly pieces: readonly PreviewPiece[];
  readonly joints: readonly PreviewJoint[];
  readonly steps: readonly PreviewStep[];
  readonly findings: readonly PreviewFinding[];
  readonly cautions: readonly string[];
}

export type Point = readonly [x: number, y: number, z: number];

export interface PreviewPiece {
  readonly id: string;
  readonly name: string;
  readonly role: 'board' | 'tenon' | 'hardware';
  readonly colour: string;
  /** Thickness, width, length; of a board's blank or a tenon. */
  readonly size?: Point;
  readonly note: string;
  /** Base64 of little-endian float32 triples, uint32 triples and float32 pairs of points. */
  readonly positions: string;
  readonly triangles: string;
  readonly edges: string;
  /** Where it goes when drawn apart. */
  readonly apart: Point;
}

export interface PreviewJoint {
  readonly id: string;
  readonly boards: readonly [string, string];
  readonly tenons: readonly string[];
  /** Measured clearances. */
  readonly clearances: readonly { readonly text: string; readonly mm: number }[];
}

export interface PreviewStep {
  readonly text: string;
  /** Pieces in hand, brought to the pieces that stand. */
  readonly moving: readonly string[];
  readonly still: readonly string[];
  readonly direction: Point;
  readonly travel: number;
}

export interface PreviewFinding {
  readonly level: 'error' | 'warning' | 'note';
  readonly text: string;
  readonly remedy: string;
  readonly subjects: readonly string[];
  readonly at: Point;
}
