import type { Vec3 } from '../frame/index.js';
import type { Facets } from './facets.js';

/** The thinnest wood beside a cavity. */
export interface Wall {
  /** mm; 0 when the cavity breaks through or meets another; as far as is looked when there is more. */
  readonly least: number;
}

/** What the facets of a finished board tell of the air a mortise's cutter left. */
export interface CavityFigures {
  /** Its surface from just below the mouth down, outwards from the air; board frame. Open at the mouth's plane when `alone`. */
  readonly facets: Facets;
  /** A point of that plane. */
  readonly mouth: Vec3;
  /** mm³, below that plane. */
  readonly volume: number;
  /** To every outer face but the mouth's, and to every other cavity. */
  readonly wall: Wall;
}

/** The air beside a tenon in one of its boards, mm; 0 when it touches or overlaps. */
export interface Clearances {
  /** Beside its flat cheeks. */
  readonly cheekClearance: number;
  /** All round but at its ends, its round edges included. */
  readonly flankClearance: number;
}
