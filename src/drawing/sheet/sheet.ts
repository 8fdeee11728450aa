import type { Vec2 } from '../../frame/index.js';
import type { Colour } from './colours.js';
import type { LineKind } from './line-kinds.js';

/**
 * A sheet of paper as data: mm on the paper, origin in its lower left corner, x to the right, y up, angles counter-clockwise
 * in degrees. Writers flip it where their own y runs down; they know nothing of boards.
 */
export interface Sheet {
  /** Unique in a set, letters, digits and hyphens: `board-left-side`. */
  readonly id: string;
  readonly title: string;
  readonly width: number;
  readonly height: number;
  /** As in the title block: `1:5`; undefined when the sheet has views of several scales, or none. */
  readonly scale: string | undefined;
  readonly entities: readonly SheetEntity[];
  /** The same in two parts, when other papers show one of them as well: a writer may draw that once for all. */
  readonly shared?: SharedBody;
}

/** What a sheet shows that other papers show too, and what is its own. */
export interface SharedBody {
  /** As it was laid out, one and the same for all papers. */
  readonly body: readonly SheetEntity[];
  /** Of the page it was laid out on, mm. */
  readonly height: number;
  /** How far from there it is set down on this sheet, mm. */
  readonly by: Vec2;
  readonly own: readonly SheetEntity[];
}

/** What a writer draws. */
export type Stroke = LineStroke | ArcStroke | CircleStroke | PolylineStroke | TextStroke | Tone;

/** Strokes that belong together; a writer draws its parts and may use the rest. */
export type SheetEntity = Stroke | Hatch | Dimension | Table;

/**
 * What entities are to someone who listens to a sheet: those that follow one another with one and the same tag belong together.
 * Without a tag they are an ornament: frames, title blocks.
 */
export type Tag =
  | { readonly role: 'heading'; readonly level: 1 | 2 }
  | { readonly role: 'paragraph' }
  /** An item of a list; items of one list share it. */
  | { readonly role: 'item'; readonly list: object }
  /** @see said a sentence in its place */
  | { readonly role: 'figure'; readonly said: string }
  | {
      readonly role: 'cell';
      readonly row: number;
      readonly column: number;
      /** What it heads, when it does. */
      readonly heads?: 'Column' | 'Row';
    };

interface Told {
  readonly tag?: Tag;
}

interface Drawn extends Told {
  readonly line: LineKind;
  /** Id of the board, tenon or hardware it shows. */
  readonly part?: string;
}

export interface LineStroke extends Drawn {
  readonly kind: 'line';
  readonly from: Vec2;
  readonly to: Vec2;
}

export interface ArcStroke extends Drawn {
  readonly kind: 'arc';
  readonly centre: Vec2;
  readonly radius: number;
  readonly startDeg: number;
  /** Above 0 and below 360, counter-clockwise. */
  readonly sweepDeg: number;
}

export interface CircleStroke extends Drawn {
  readonly kind: 'circle';
  readonly centre: Vec2;
  readonly radius: number;
  readonly fill?: Fill;
}

export interface PolylineStroke extends Drawn {
  readonly kind: 'polyline';
  readonly points: readonly Vec2[];
  readonly closed: boolean;
  readonly fill?: Fill;
}

/** A surface of a picture in one tone, without an outline, and the strokes of its grain. */
export interface Tone extends Told {
  readonly kind: 'tone';
  readonly part: string;
  /** Outer loops counter-clockwise, holes clockwise. */
  readonly loops: readonly (readonly Vec2[])[];
  readonly colour: Colour;
  readonly marks: readonly (readonly Vec2[])[];
  readonly ink: Colour;
}

/** `ink` for arrow heads, `paper` for a ground that covers what lies below. */
export type Fill = 'ink' | 'paper';

/** One row of letters. `at` is on the baseline: its left end, middle or right end. */
export interface TextStroke extends Told {
  readonly kind: 'text';
  readonly at: Vec2;
  readonly text: string;
  /** Of a capital, mm: 2.5, 3.5, 5, 7 or 10 (ISO 3098-1); 2.2 in running text and tables, which are read and not measured. */
  readonly height: TextHeight;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly rotationDeg: number;
  readonly bold?: boolean;
}

const TEXT_HEIGHTS = [2.2, 2.5, 3.5, 5, 7, 10] as const;
export type TextHeight = (typeof TEXT_HEIGHTS)[number];

/** A cut surface: its loops, and the lines that fill it. */
export interface Hatch extends Told {
  readonly kind: 'hatch';
  readonly part: string;
  readonly loops: readonly (readonly Vec2[])[];
  readonly angleDeg: number;
  readonly parts: readonly LineStroke[];
}

/** A dimension with the model's own figure, so that what is printed can be held against it. */
export interface Dimension extends Told {
  readonly kind: 'dimension';
  /** What it measures: `M1 centre from the reference end`. */
  readonly what: string;
  /** mm or degrees, not rounded. */
  readonly value: number;
  readonly unit: 'mm' | 'deg';
  readonly parts: readonly Stroke[];
}

export interface Table extends Told {
  readonly kind: 'table';
  /** Upper left corner. */
  readonly at: Vec2;
  readonly widths: readonly number[];
  readonly rowHeight: number;
  /** The first row is the head. */
  readonly rows: readonly (readonly string[])[];
  readonly parts: readonly Stroke[];
}

/** The strokes of a sheet in drawing order, groups opened. */
export const strokesOf = (entities: readonly SheetEntity[]): readonly Stroke[] =>
  entities.flatMap((entity): readonly Stroke[] => ('parts' in entity ? entity.parts : [entity]));
