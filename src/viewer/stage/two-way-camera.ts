import { PerspectiveCamera, type Vector3 } from 'three';

/** Turned by more than this, a flat picture is a picture in perspective again, radians. */
const TURNED = 1e-3;

/**
 * A camera that sees in perspective, or flat, as a drawing shows a piece: lines of one length and direction are equally long
 * wherever they lie. At the target both pictures are equally large, so that moving and zooming are the same in both.
 */
export class TwoWayCamera extends PerspectiveCamera {
  private reach = 1;
  private squareTo: Vector3 | undefined;

  get flat(): boolean {
    return this.squareTo !== undefined;
  }

  /** @param away from the target to the eye: as long as it is not turned, the picture stays flat */
  lieFlat(away: Vector3): void {
    this.squareTo = away.clone();
  }

  /** @param away from the target to the eye, mm */
  look(away: Vector3, near: number, far: number): void {
    if (this.squareTo && away.angleTo(this.squareTo) > TURNED) this.squareTo = undefined;
    this.reach = away.length();
    // nothing stands behind the eye of a flat picture
    this.near = this.squareTo ? -far : near;
    this.far = far;
    this.updateProjectionMatrix();
  }

  override updateProjectionMatrix(): void {
    super.updateProjectionMatrix();
    if (!this.squareTo) return;
    const high = this.reach * Math.tan((this.fov * Math.PI) / 360);
    const wide = high * this.aspect;
    this.projectionMatrix.makeOrthographic(-wide, wide, high, -high, this.near, this.far);
    this.projectionMatrixInverse.copy(this.projectionMatrix).invert();
  }
}
