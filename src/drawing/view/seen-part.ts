import type { Vec3 } from '../../frame/index.js';
import type { FeatureEdges } from '../../solid/index.js';

/** A closed solid in a picture. */
export interface SeenPart {
  /** Kept on every line of it. */
  readonly id: string;
  readonly solid: FeatureEdges;
  /** Moved by this for an exploded picture, mm. */
  readonly shift?: Vec3;
}

/** A straight line in space that is drawn where nothing hides it: the axis of a tenon. */
export interface Wire {
  readonly id: string;
  readonly from: Vec3;
  readonly to: Vec3;
}
