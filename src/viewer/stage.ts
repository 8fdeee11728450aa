import {
  Box3,
  Color,
  DirectionalLight,
  HemisphereLight,
  Mesh,
  PerspectiveCamera,
  Plane,
  Raycaster,
  Scene,
  Sphere,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { SectionPlane } from './cap.js';
import { floorGrid } from './floor-grid.js';
import type { Point, PreviewData } from './preview-data.js';
import { shownPiece } from './shown-piece.js';
import { VIEWS, type ViewName } from './views.js';

/** How pieces stand and look. */
export interface Arrangement {
  readonly offset: (id: string) => Point;
  /** 0: not there; 1: as solid as wood. */
  readonly opacity: (id: string) => number;
}

/** The solids on a canvas: drawn when something changed, never in an endless loop. Lengths mm, angles radians. */
export interface Stage {
  readonly canvas: HTMLCanvasElement;
  readonly view: (name: ViewName) => void;
  readonly flyTo: (at: Point, round: number) => void;
  readonly flyToPieces: (ids: readonly string[]) => void;
  readonly orbit: (turn: number, tilt: number) => void;
  /** Sideways and up, in shares of the picture. */
  readonly pan: (right: number, up: number) => void;
  readonly zoom: (by: number) => void;
  readonly arrange: (how: Arrangement) => void;
  readonly light: (chosen: ReadonlySet<string>, hovered: ReadonlySet<string>) => void;
  readonly cut: (plane: SectionPlane | undefined) => void;
  readonly theme: (looks: Looks) => void;
  /** The piece under a point of the canvas, in its own pixels. */
  readonly pick: (x: number, y: number) => string | undefined;
  /** Where a point stands in the picture, in the canvas's own pixels. */
  readonly pixel: (at: Point) => readonly [x: number, y: number];
  /** Called after every picture. */
  readonly afterDraw: (then: () => void) => void;
  /** Redraws. */
  readonly draw: () => void;
}

export interface Looks {
  readonly background: string;
  readonly edge: string;
  readonly floor: string;
}

const CHOSEN = new Color('#c8452b');
const FLIGHT_MS = 450;

/** @throws Error when the browser has no WebGL */
export function openStage(canvas: HTMLCanvasElement, data: PreviewData): Stage {
  const renderer = new WebGLRenderer({ canvas, antialias: true, preserveDrawingBuffer: true });
  renderer.localClippingEnabled = true;
  const scene = new Scene();
  const camera = new PerspectiveCamera(30, 1, 1, 10_000);
  camera.up.set(0, 0, 1);
  const shown = new Map(data.pieces.map((piece, i) => [piece.id, shownPiece(piece, i)]));
  const whole = [...shown.values()].reduce((sum, { box }) => sum.union(box), new Box3());
  const { center: middle, radius } = whole.getBoundingSphere(new Sphere());
  const floor = floorGrid(whole);
  scene.add(floor, ...[...shown.values()].map(({ group }) => group), ...lamps());
  canvas.dataset.triangles = String([...shown.values()].reduce((sum, one) => sum + one.triangles, 0));

  const controls = new OrbitControls(camera, canvas);
  const told: (() => void)[] = [];
  let waiting = false;
  let grounded = true;
  const drawNow = (): void => {
    waiting = false;
    const { clientWidth, clientHeight } = canvas;
    const size = renderer.getSize(new Vector2());
    if (size.x !== clientWidth || size.y !== clientHeight) {
      renderer.setPixelRatio(Math.min(window.devicePixelRatio, 2));
      renderer.setSize(clientWidth, clientHeight, false);
      camera.aspect = clientWidth / Math.max(clientHeight, 1);
    }
    const far = camera.position.distanceTo(controls.target);
    camera.near = Math.max(far / 100, 0.5);
    camera.far = far + 10 * radius;
    camera.updateProjectionMatrix();
    floor.visible = grounded && camera.position.z > whole.min.z;
    renderer.render(scene, camera);
    canvas.dataset.eye = camera.position.toArray().map(Math.round).join(' ');
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

  let flight = 0;
  const fly = (target: Vector3, eye: Vector3): void => {
    flight += 1;
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
      draw();
      if (share < 1) requestAnimationFrame(go);
    };
    if (STILL.matches) go(since);
    else requestAnimationFrame(go);
  };
  controls.addEventListener('start', () => {
    flight += 1;
  });
  const distanceFor = (size: number): number => {
    const half = (camera.fov * Math.PI) / 360;
    const narrow = Math.min(1, canvas.clientWidth / Math.max(canvas.clientHeight, 1));
    return (1.18 * size) / Math.sin(half) / narrow;
  };
  const stand = (target: Vector3, direction: Vector3, size: number): void =>
    fly(target, target.clone().addScaledVector(direction.clone().normalize(), distanceFor(size)));
  const eyeNow = (): Vector3 => camera.position.clone().sub(controls.target);
  const boxOf = (ids: readonly string[]): Box3 =>
    ids.reduce((sum, id) => {
      const one = shown.get(id);
      return one ? sum.union(one.box.clone().translate(one.group.position)) : sum;
    }, new Box3());
  const visibleBox = (): Box3 =>
    boxOf([...shown.values()].filter(({ group }) => group.visible).map(({ piece }) => piece.id));

  let plane: SectionPlane | undefined;
  const clip = new Plane();
  const recut = (): void => {
    for (const { group, cap } of shown.values()) {
      const { x, y, z } = group.position;
      const local = plane && {
        ...plane,
        at: plane.at - (plane.normal[0] * x + plane.normal[1] * y + plane.normal[2] * z),
      };
      cap.cut(group.visible && !group.userData.faint ? local : undefined);
    }
  };

  return {
    canvas,
    draw,
    view: (name) => {
      const sphere = visibleBox().getBoundingSphere(new Sphere());
      const empty = sphere.radius < 0;
      stand(empty ? middle : sphere.center, new Vector3(...VIEWS[name]), empty ? radius : sphere.radius);
    },
    flyTo: (at, round) => stand(new Vector3(...at), eyeNow(), round),
    flyToPieces: (ids) => {
      const sphere = boxOf(ids).getBoundingSphere(new Sphere());
      if (sphere.radius > 0) stand(sphere.center, eyeNow(), 1.25 * sphere.radius);
    },
    orbit: (turn, tilt) => {
      flight += 1;
      const eye = eyeNow().applyAxisAngle(new Vector3(0, 0, 1), turn);
      const side = new Vector3(0, 0, 1).cross(eye).normalize();
      const tilted = eye.clone().applyAxisAngle(side, -tilt);
      // not over the pole, where up and down change places
      const kept = Math.hypot(tilted.x, tilted.y) > 0.02 * tilted.length() && tilted.dot(eye) > 0;
      camera.position.copy(controls.target).add(kept ? tilted : eye);
      controls.update();
      draw();
    },
    pan: (right, up) => {
      flight += 1;
      const wide = 2 * Math.tan((camera.fov * Math.PI) / 360) * eyeNow().length();
      const shift = new Vector3(right * wide, up * wide, 0).applyQuaternion(camera.quaternion);
      controls.target.add(shift);
      camera.position.add(shift);
      controls.update();
      draw();
    },
    zoom: (by) => {
      flight += 1;
      camera.position.copy(controls.target).add(eyeNow().multiplyScalar(by));
      controls.update();
      draw();
    },
    arrange: ({ offset, opacity }) => {
      for (const [id, { group, face, edge }] of shown) {
        group.position.set(...offset(id));
        const share = opacity(id);
        group.visible = share > 0;
        group.userData.faint = share < 0.2;
        face.opacity = share;
        face.depthWrite = share === 1;
        edge.opacity = Math.min(1, share + 0.2);
        for (const material of [face, edge]) {
          // the graphics program differs, so it is made anew
          if (material.transparent !== share < 1) material.needsUpdate = true;
          material.transparent = share < 1;
        }
      }
      // nothing hangs below the floor it stands on
      grounded = visibleBox().min.z > whole.min.z - 1;
      recut();
      draw();
    },
    light: (chosen, hovered) => {
      for (const [id, { face, own, cap }] of shown) {
        face.color.copy(own);
        if (chosen.has(id)) face.color.lerp(CHOSEN, 0.65);
        else if (hovered.has(id)) face.color.lerp(CHOSEN, 0.4);
        cap.tint(face.color);
      }
      draw();
    },
    cut: (asked) => {
      plane = asked;
      if (plane) {
        clip.normal.set(...plane.normal).negate();
        clip.constant = plane.at;
      }
      for (const { face, edge } of shown.values()) {
        face.clippingPlanes = plane ? [clip] : [];
        edge.clippingPlanes = plane ? [clip] : [];
      }
      recut();
      draw();
    },
    theme: ({ background, edge, floor: lines }) => {
      scene.background = new Color(background);
      floor.material.color.set(lines);
      for (const one of shown.values()) {
        one.edge.color.set(edge);
        one.cap.tint(one.face.color);
      }
      draw();
    },
    pick: (x, y) => {
      const { clientWidth, clientHeight } = canvas;
      const ray = new Raycaster();
      ray.setFromCamera(new Vector2((2 * x) / clientWidth - 1, 1 - (2 * y) / clientHeight), camera);
      const solids: Mesh[] = [];
      for (const { group } of shown.values()) {
        if (!group.visible || group.userData.faint) continue;
        group.traverse((one) => one instanceof Mesh && solids.push(one));
      }
      const kept = (point: Vector3): boolean => !plane || clip.distanceToPoint(point) > -0.001;
      return ray.intersectObjects(solids, false).find(({ point }) => kept(point))?.object.userData.id;
    },
    pixel: (at) => {
      const { x, y } = new Vector3(...at).project(camera);
      return [((1 + x) * canvas.clientWidth) / 2, ((1 - y) * canvas.clientHeight) / 2];
    },
    afterDraw: (then) => {
      told.push(then);
    },
  };
}

/** The person has asked their system for no movement. */
const STILL = window.matchMedia('(prefers-reduced-motion: reduce)');

function lamps() {
  const sky = new HemisphereLight('#ffffff', '#8d8474', 1.55);
  sky.position.set(0, 0, 1);
  const sun = new DirectionalLight('#fff8ec', 1.75);
  sun.position.set(1.2, -2, 3);
  const window = new DirectionalLight('#e6efff', 0.55);
  window.position.set(-3, -0.6, 0.8);
  return [sky, sun, window];
}
