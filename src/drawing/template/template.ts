import type { Vec2 } from '../../frame/index.js';
import { circle, type Profile } from '../../profile/index.js';

/**
 * What happens along a line of a template: cut through, routed to a depth, drilled, marked only; words inside the part; the
 * scale bar; words and lines beside the part, which a machine leaves out.
 */
export const LAYERS = ['CUT', 'POCKET', 'DRILL', 'MARK', 'NOTE', 'SCALE', 'LEGEND'] as const;

export type Layer = (typeof LAYERS)[number];

/** How a line is drawn: dashed for what lies on the far side, dash and dot for a centre line; whole when absent. */
export type Dashing = 'far' | 'centre';

interface Drawn {
  readonly layer: Layer;
  readonly dashing?: Dashing;
}

/** A closed line; counter-clockwise encloses what stays, clockwise what is taken out. */
export interface ProfileEntity extends Drawn {
  readonly kind: 'profile';
  readonly profile: Profile;
}

export interface CircleEntity extends Drawn {
  readonly kind: 'circle';
  readonly centre: Vec2;
  readonly radius: number;
}

export interface LineEntity extends Drawn {
  readonly kind: 'line';
  readonly from: Vec2;
  readonly to: Vec2;
}

/** One row of letters; `at` is the left end of its baseline. */
export interface TextEntity {
  readonly layer: Layer;
  readonly kind: 'text';
  readonly at: Vec2;
  /** Height of a capital, mm. */
  readonly height: number;
  readonly text: string;
  /** Counter-clockwise from X. */
  readonly rotationDeg: number;
}

export type Entity = ProfileEntity | CircleEntity | LineEntity | TextEntity;

/** The closed line of an entity; undefined for marks and words. */
export function loopOf(one: Entity): Profile | undefined {
  if (one.kind === 'circle') return circle({ diameter: 2 * one.radius, centre: one.centre });
  return one.kind === 'profile' ? one.profile : undefined;
}

/**
 * A full-size template of one board, mm, in the board's own X and Y: seen from above with the reference face down on the
 * bench, so nothing is mirrored.
 */
export interface Template {
  /** Id of the board. */
  readonly board: string;
  readonly entities: readonly Entity[];
}
