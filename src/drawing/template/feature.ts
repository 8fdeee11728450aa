import { printFine, printLength, printTool, type Rule } from '../../length/index.js';
import type { Entity } from './template.js';

/** What a template shows of one mortise, hole, slot or bevel. */
export interface Feature {
  readonly entities: readonly Entity[];
  readonly mark: string;
  /** The row below the part, beside its mark: what it is, how deep, into which face. */
  readonly row: string;
}

/** Sizes to work by: mm as they are typed, `8 mm`; inches as on the drawings. */
export const size = (mm: number, units: Rule): string =>
  units === 'mm' ? printFine(mm, { units }) : printLength(mm, { units });

/** Sizes of cutters, bushes and drills, and of what they cut. */
export const toolSize = (mm: number, units: Rule): string =>
  units === 'mm' ? printFine(mm, { units }) : printTool(mm, { units });

/** A place on the board, as it is read off a rule: `60.0 mm from the reference end, 45.0 mm from the reference edge`. */
export const spot = (x: number, y: number, units: Rule): string =>
  `${printLength(x, { units })} from the reference end, ${printLength(y, { units })} from the reference edge`;

/** The mark beside a feature in a wide face: what enters the face that lies on the bench says so. */
export const labelOf = (mark: string, face: string): string =>
  face === 'reference-face' ? `${mark} from below` : mark;

/** `reference-face` in words. */
export const faceName = (face: string): string => face.replaceAll('-', ' ');
