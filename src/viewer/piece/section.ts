import { Plane, type Vector3 } from 'three';
import type { SectionPlane } from './cap.js';
import type { PiecesShown } from './pieces-shown.js';
import { drawSides } from './shown-piece.js';

/** The section plane through everything shown. */
export interface Section {
  readonly put: (plane: SectionPlane | undefined) => void;
  /** Cuts anew, after pieces have moved. */
  readonly recut: () => void;
  readonly keeps: (point: Vector3) => boolean;
}

export function sectionThrough(shown: PiecesShown): Section {
  let plane: SectionPlane | undefined;
  const clip = new Plane();
  const recut = (): void => {
    for (const { group, cap } of shown.values()) {
      const { x, y, z } = group.position;
      const local = plane && {
        ...plane,
        at: plane.at - (plane.normal[0] * x + plane.normal[1] * y + plane.normal[2] * z),
      };
      cap.cut(group.visible ? local : undefined);
    }
  };
  return {
    recut,
    keeps: (point) => !plane || clip.distanceToPoint(point) > -0.001,
    put: (asked) => {
      plane = asked;
      if (plane) {
        clip.normal.set(...plane.normal).negate();
        clip.constant = plane.at;
      }
      for (const { face, edge } of shown.values()) {
        face.clippingPlanes = plane ? [clip] : [];
        edge.clippingPlanes = plane ? [clip] : [];
        drawSides(face);
      }
      recut();
    },
  };
}
