import type { Units } from '../../length/index.js';
import { printFine, printLength } from '../../length/index.js';
import type { Entity } from './template.js';

/** What a template shows of one mortise, hole, slot or bevel. */
export interface Feature {
  readonly entities: readonly Entity[];
  readonly mark: string;
  /** The row below the part, beside its mark: what it is, how deep, into which face. */
  readonly row: string;
}

/** Sizes to work by, as they are typed: `8 mm`. */
export const size = (mm: number, units: Units): string => printFine(mm, { units });

/** A place on the board, as it is read off a rule: `60.0 mm from the reference end, 45.0 mm from the reference edge`. */
export const spot = (x: number, y: number, units: Units): string =>
  `${printLength(x, { units })} from the reference end, ${printLength(y, { units })} from the reference edge`;

/** The mark beside a feature in a wide face: what enters the face that lies on the bench says so. */
export const labelOf = (mark: string, face: string): string =>
  face === 'reference-face' ? `${mark} from below` : mark;

/** `reference-face` in words. */
export const faceName = (face: string): string => face.replaceAll('-', ' ');
