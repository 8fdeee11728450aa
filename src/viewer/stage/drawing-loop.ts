import { type Scene, type Sphere, Vector2, WebGLRenderer } from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { TwoWayCamera } from './two-way-camera.js';

/** Draws when something changed, never in an endless loop. */
export interface DrawingLoop {
  readonly controls: OrbitControls;
  /** Draws in the next frame, once however often it is asked. */
  readonly draw: () => void;
  /** Draws before anything else happens: the page is about to be printed. */
  readonly drawNow: () => void;
  readonly afterDraw: (then: () => void) => void;
}

/**
 * @param ball round what is shown
 * @param before called ahead of every picture
 * @throws Error when the browser has no WebGL
 */
export function drawingLoop(
  canvas: HTMLCanvasElement,
  scene: Scene,
  camera: TwoWayCamera,
  ball: Sphere,
  before: () => void,
): DrawingLoop {
  const renderer = new WebGLRenderer({ canvas, antialias: true, preserveDrawingBuffer: true });
  renderer.localClippingEnabled = true;
  // only now: without WebGL the canvas is left alone
  const controls = new OrbitControls(camera, canvas);
  const resize = (): void => {
    const { clientWidth, clientHeight } = canvas;
    const size = renderer.getSize(new Vector2());
    if (size.x === clientWidth && size.y === clientHeight) return;
    renderer.setPixelRatio(Math.min(window.devicePixelRatio, 2));
    renderer.setSize(clientWidth, clientHeight, false);
    camera.aspect = clientWidth / Math.max(clientHeight, 1);
  };
  const told: (() => void)[] = [];
  let waiting = false;
  const drawNow = (): void => {
    waiting = false;
    resize();
    const away = camera.position.clone().sub(controls.target);
    const far = away.length();
    camera.look(away, Math.max(far / 100, 0.5), far + 10 * ball.radius);
    before();
    renderer.render(scene, camera);
    canvas.dataset.eye = camera.position.toArray().map(Math.round).join(' ');
    canvas.dataset.sight = camera.flat ? 'flat' : 'in perspective';
    canvas.dataset.target = controls.target.toArray().map(Math.round).join(' ');
    for (const then of told) then();
  };
  const draw = (): void => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(drawNow);
  };
  controls.addEventListener('change', draw);
  new ResizeObserver(draw).observe(canvas);
  return { controls, draw, drawNow, afterDraw: (then) => void told.push(then) };
}
