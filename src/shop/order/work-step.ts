import type { FaceId } from '../../board/index.js';
import type { Hand } from '../boards/index.js';

export type WorkKind =
  | 'template'
  | 'aid'
  | 'test blank'
  | 'edge joint'
  | 'mill'
  | 'test cut'
  | 'mortise'
  | 'trim horn'
  | 'cut ends'
  | 'outline'
  | 'bevel'
  | 'opening'
  | 'hole'
  | 'slot'
  | 'groove'
  | 'ease'
  | 'strip'
  | 'tenons'
  | 'dry fit'
  | 'dry assembly'
  | 'glue-up'
  | 'finish'
  | 'fix'
  | 'assemble';

/** One thing done to one board; lengths mm, exact. */
export interface WorkStep {
  /** `left-side.3`: the third thing done to that board. */
  readonly id: string;
  /** Its place in the whole order, from 1. */
  readonly number: number;
  /** Undefined for what belongs to several or to none, such as a dry fit. */
  readonly board: string | undefined;
  readonly hand: Hand | undefined;
  readonly kind: WorkKind;
  /** What is done, without lengths. */
  readonly what: string;
  /** Faces that must be there and true: what the work is held by and measured from. */
  readonly uses: readonly FaceId[];
  /** Faces that are there afterwards and were not before. */
  readonly makes: readonly FaceId[];
  /** Ids of what is cut: mortises, holes, slots, openings, bevels. */
  readonly cuts: readonly string[];
  readonly figures: readonly {
    readonly name: string;
    readonly value: number;
    readonly unit: 'mm' | 'tool' | 'deg';
  }[];
  /** The set-up card, for a mortise or a groove. */
  readonly setup: string | undefined;
}

/** A step before its place in the order is known. */
export type StepDraft = Omit<WorkStep, 'id' | 'number' | 'hand'>;

/** A length of a step, mm. */
export const mm = (name: string, value: number) => ({ name, value, unit: 'mm' as const });

/** The size of a cutter, a bush or a drill, mm. */
export const tool = (name: string, value: number) => ({ name, value, unit: 'tool' as const });
