import { Box3, Color, Mesh, type Raycaster, type Vector3 } from 'three';
import type { Point } from '../told/index.js';
import { drawSides, type ShownPiece } from './shown-piece.js';

/** By id. */
export type PiecesShown = ReadonlyMap<string, ShownPiece>;

/** How pieces stand and look. */
export interface Arrangement {
  readonly offset: (id: string) => Point;
  /** 0: not there; 1: as solid as wood. */
  readonly opacity: (id: string) => number;
}

const CHOSEN = new Color('#c8452b');

/** Round pieces where they stand now. */
export function boxOf(shown: PiecesShown, ids: readonly string[]): Box3 {
  return ids.reduce((sum, id) => {
    const one = shown.get(id);
    return one ? sum.union(one.box.clone().translate(one.group.position)) : sum;
  }, new Box3());
}

export function visibleBox(shown: PiecesShown): Box3 {
  return boxOf(
    shown,
    [...shown.values()].filter(({ group }) => group.visible).map(({ piece }) => piece.id),
  );
}

export function arrangePieces(shown: PiecesShown, { offset, opacity }: Arrangement): void {
  for (const [id, { group, face, edge }] of shown) {
    group.position.set(...offset(id));
    const share = opacity(id);
    group.visible = share > 0;
    face.opacity = share;
    face.depthWrite = share === 1;
    edge.opacity = Math.min(1, share + 0.2);
    for (const material of [face, edge]) {
      // the graphics program differs, so it is made anew
      if (material.transparent !== share < 1) material.needsUpdate = true;
      material.transparent = share < 1;
    }
    drawSides(face);
  }
}

export function lightPieces(
  shown: PiecesShown,
  chosen: ReadonlySet<string>,
  hovered: ReadonlySet<string>,
): void {
  for (const [id, { piece, face, own, cap, glow }] of shown) {
    glow.visible = piece.role !== 'board' && (chosen.has(id) || hovered.has(id));
    face.color.copy(own);
    if (chosen.has(id)) face.color.lerp(CHOSEN, 0.65);
    else if (hovered.has(id)) face.color.lerp(CHOSEN, 0.4);
    cap.tint(face.color);
  }
}

/** The first piece a ray meets; what is cut away lets it through. */
export function pieceMet(
  shown: PiecesShown,
  ray: Raycaster,
  keeps: (point: Vector3) => boolean,
): string | undefined {
  const solids: Mesh[] = [];
  for (const { group } of shown.values()) {
    if (!group.visible) continue;
    group.traverse((one) => one instanceof Mesh && one.userData.id !== undefined && solids.push(one));
  }
  return ray.intersectObjects(solids, false).find(({ point }) => keeps(point))?.object.userData.id;
}
