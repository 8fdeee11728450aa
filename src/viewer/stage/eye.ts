import { Vector3 } from 'three';
import type { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { Point } from '../told/index.js';
import { flightsOf } from './flights.js';
import type { TwoWayCamera } from './two-way-camera.js';

/** From where to where the picture is seen, mm. */
export interface Seen {
  readonly eye: Point;
  readonly target: Point;
  readonly flat: boolean;
}

/** Where the picture is seen from. Lengths mm, angles radians. */
export interface Eye {
  /** Flies to where a ball fills the picture, seen as now when nothing else is said. */
  readonly flyTo: (middle: Vector3, radius: number, direction?: Vector3, flat?: boolean) => void;
  readonly orbit: (turn: number, tilt: number) => void;
  /** Sideways and up, in shares of the picture. */
  readonly pan: (right: number, up: number) => void;
  readonly zoom: (by: number) => void;
  readonly seen: () => Seen;
  readonly standAt: (seen: Seen) => void;
}

export function eyeOf(
  canvas: HTMLCanvasElement,
  camera: TwoWayCamera,
  controls: OrbitControls,
  draw: () => void,
): Eye {
  const flights = flightsOf(camera, controls, draw);
  const half = (camera.fov * Math.PI) / 360;
  const fromTarget = (): Vector3 => camera.position.clone().sub(controls.target);
  const distanceFor = (radius: number): number => {
    const narrow = Math.min(1, canvas.clientWidth / Math.max(canvas.clientHeight, 1));
    return (1.18 * radius) / Math.sin(half) / narrow;
  };
  const stand = (away: Vector3): void => {
    flights.end();
    camera.position.copy(controls.target).add(away);
    controls.update();
    draw();
  };
  return {
    flyTo: (middle, radius, direction = fromTarget(), flat = camera.flat) =>
      flights.fly(
        middle,
        middle.clone().addScaledVector(direction.clone().normalize(), distanceFor(radius)),
        flat,
      ),
    orbit: (turn, tilt) => {
      const away = fromTarget().applyAxisAngle(new Vector3(0, 0, 1), turn);
      const side = new Vector3(0, 0, 1).cross(away).normalize();
      const tilted = away.clone().applyAxisAngle(side, -tilt);
      // not over the pole, where up and down change places
      const kept = Math.hypot(tilted.x, tilted.y) > 0.02 * tilted.length() && tilted.dot(away) > 0;
      stand(kept ? tilted : away);
    },
    pan: (right, up) => {
      const away = fromTarget();
      const wide = 2 * Math.tan(half) * away.length();
      controls.target.add(new Vector3(right * wide, up * wide, 0).applyQuaternion(camera.quaternion));
      stand(away);
    },
    seen: () => {
      const [eye, target] = [camera.position, controls.target].map(({ x, y, z }): Point => [x, y, z]);
      return { eye: eye!, target: target!, flat: camera.flat };
    },
    standAt: ({ eye, target, flat }) => {
      controls.target.set(...target);
      const away = new Vector3(...eye).sub(controls.target);
      stand(away);
      if (flat) camera.lieFlat(fromTarget());
    },
    zoom: (by) => stand(fromTarget().multiplyScalar(by)),
  };
}
