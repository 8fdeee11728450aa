import type { Vector3 } from 'three';
import type { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { TwoWayCamera } from './two-way-camera.js';

const FLIGHT_MS = 450;

/** The person has asked their system for no movement. */
const STILL = window.matchMedia('(prefers-reduced-motion: reduce)');

/** Moves of the eye that take their time; the person's own hand, or another flight, ends one. */
export interface Flights {
  /** @param flat there the picture lies flat */
  readonly fly: (target: Vector3, eye: Vector3, flat: boolean) => void;
  readonly end: () => void;
}

export function flightsOf(camera: TwoWayCamera, controls: OrbitControls, draw: () => void): Flights {
  let flight = 0;
  const end = (): void => {
    flight += 1;
  };
  controls.addEventListener('start', end);
  const fly = (target: Vector3, eye: Vector3, flat: boolean): void => {
    end();
    const [own, from, since] = [flight, controls.target.clone(), performance.now()];
    const fromEye = camera.position.clone().sub(from);
    const toEye = eye.clone().sub(target);
    const go = (now: number): void => {
      if (own !== flight) return;
      const share = STILL.matches ? 1 : Math.min(1, Math.max(0, (now - since) / FLIGHT_MS));
      const eased = share * share * (3 - 2 * share);
      controls.target.lerpVectors(from, target, eased);
      // round the target, not through it
      const away = fromEye.clone().lerp(toEye, eased);
      away.setLength(fromEye.length() + (toEye.length() - fromEye.length()) * eased || 1);
      camera.position.copy(controls.target).add(away);
      controls.update();
      if (share === 1 && flat) camera.lieFlat(camera.position.clone().sub(controls.target));
      draw();
      if (share < 1) requestAnimationFrame(go);
    };
    if (STILL.matches) go(since);
    else requestAnimationFrame(go);
  };
  return { fly, end };
}
