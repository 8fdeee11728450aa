import type { Frame, Vec3 } from '../../frame/index.js';
import type { FeatureEdges } from '../../solid/index.js';
import type { Colour } from '../sheet/index.js';

/** A closed solid in a picture. */
export interface SeenPart {
  /** Kept on every line of it. */
  readonly id: string;
  readonly solid: FeatureEdges;
  /** Moved by this for an exploded picture, mm. */
  readonly shift?: Vec3;
  /** How it is toned in a picture. */
  readonly look?: Look;
}

/** What a part is of, to the eye. */
export interface Look {
  readonly colour: Colour;
  /** Wood with a grain: x runs along it, y across the board's width, z through its thickness, as the part stands; mm. */
  readonly wood?: { readonly frame: Frame; readonly width: number; readonly thickness: number };
}

/** A straight line in space that is drawn where nothing hides it: the axis of a tenon. */
export interface Wire {
  readonly id: string;
  readonly from: Vec3;
  readonly to: Vec3;
}
