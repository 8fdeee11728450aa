import { DirectionalLight, HemisphereLight, type Light } from 'three';

/** Sky, sun and a window: every face of a piece has a brightness of its own. */
export function stageLamps(): readonly Light[] {
  const sky = new HemisphereLight('#ffffff', '#8d8474', 1.55);
  sky.position.set(0, 0, 1);
  const sun = new DirectionalLight('#fff8ec', 1.75);
  sun.position.set(1.2, -2, 3);
  const window = new DirectionalLight('#e6efff', 0.55);
  window.position.set(-3, -0.6, 0.8);
  return [sky, sun, window];
}
