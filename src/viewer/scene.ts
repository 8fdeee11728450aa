import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  DoubleSide,
  Group,
  HemisphereLight,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshStandardMaterial,
  type Object3D,
  PerspectiveCamera,
  Plane,
  Raycaster,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { Point, PreviewData, PreviewPiece } from './preview-data.js';

/** Where the eye stands, from the middle of the piece. */
export const VIEWS = {
  corner: [-0.75, -1, 0.6],
  front: [0, -1, 0],
  right: [1, 0, 0],
  back: [0, 1, 0],
  top: [0, -0.0001, 1],
  below: [0, -0.0001, -1],
} as const;

export type ViewName = keyof typeof VIEWS;

interface Shown {
  readonly piece: PreviewPiece;
  readonly group: Group;
  readonly face: MeshStandardMaterial;
  readonly edge: LineBasicMaterial;
  readonly own: Color;
}

/** The solids on a canvas: drawn when something changed, never in an endless loop. */
export interface Stage {
  readonly view: (name: ViewName) => void;
  readonly flyTo: (at: Point, radius: number) => void;
  readonly orbit: (turn: number, tilt: number) => void;
  readonly zoom: (by: number) => void;
  readonly place: (offsetOf: (id: string) => Point, ghost: (id: string) => number) => void;
  readonly light: (ids: ReadonlySet<string>) => void;
  readonly cut: (axis: 0 | 1 | 2 | undefined, share: number) => void;
  readonly theme: (background: string, edge: string) => void;
  readonly pick: (x: number, y: number) => string | undefined;
  readonly middleOf: (id: string) => Point;
  readonly canvas: HTMLCanvasElement;
}

const HIGHLIGHT = new Color('#d4562f');

/** @throws Error when the browser has no WebGL */
export function openStage(canvas: HTMLCanvasElement, data: PreviewData): Stage {
  const renderer = new WebGLRenderer({ canvas, antialias: true, preserveDrawingBuffer: true });
  renderer.localClippingEnabled = true;
  const scene = new Scene();
  const camera = new PerspectiveCamera(32, 1, 1, 10_000);
  camera.up.set(0, 0, 1);
  const low = new Vector3(...data.min);
  const high = new Vector3(...data.max);
  const middle = low.clone().add(high).multiplyScalar(0.5);
  const radius = Math.max(high.distanceTo(low) / 2, 1);
  const clip = new Plane(new Vector3(1, 0, 0), Number.POSITIVE_INFINITY);
  scene.add(new HemisphereLight('#ffffff', '#8a8172', 1.7));
  const sun = new DirectionalLight('#fffaf0', 1.9);
  sun.position.set(-1, -2, 3);
  scene.add(sun);

  const shown = new Map<string, Shown>();
  for (const piece of data.pieces) {
    const made = shownPiece(piece);
    shown.set(piece.id, made);
    scene.add(made.group);
  }

  const controls = new OrbitControls(camera, canvas);
  let waiting = false;
  const draw = (): void => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => {
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
      camera.far = far + 8 * radius;
      camera.updateProjectionMatrix();
      renderer.render(scene, camera);
    });
  };
  controls.addEventListener('change', draw);
  new ResizeObserver(draw).observe(canvas);

  const stand = (target: Vector3, direction: Vector3, size: number): void => {
    const half = (camera.fov * Math.PI) / 360;
    const narrow = Math.min(1, canvas.clientWidth / Math.max(canvas.clientHeight, 1));
    const distance = (1.15 * size) / Math.sin(half) / narrow;
    controls.target.copy(target);
    camera.position.copy(target).addScaledVector(direction.normalize(), distance);
    controls.update();
    draw();
  };

  const stage: Stage = {
    canvas,
    view: (name) => stand(middle, new Vector3(...VIEWS[name]), radius),
    flyTo: (at, size) => stand(new Vector3(...at), camera.position.clone().sub(controls.target), size),
    orbit: (turn, tilt) => {
      const eye = camera.position.clone().sub(controls.target);
      const side = new Vector3(0, 0, 1).cross(eye).normalize();
      eye.applyAxisAngle(new Vector3(0, 0, 1), turn);
      const tilted = eye.clone().applyAxisAngle(side, -tilt);
      // not over the pole, where up and down change places
      if (Math.hypot(tilted.x, tilted.y) > 0.02 * tilted.length()) eye.copy(tilted);
      camera.position.copy(controls.target).add(eye);
      controls.update();
      draw();
    },
    zoom: (by) => {
      camera.position.sub(controls.target).multiplyScalar(by).add(controls.target);
      controls.update();
      draw();
    },
    place: (offsetOf, ghost) => {
      for (const [id, { group, face, edge }] of shown) {
        group.position.set(...offsetOf(id));
        const opacity = ghost(id);
        group.visible = opacity > 0;
        face.opacity = opacity;
        face.transparent = opacity < 1;
        face.depthWrite = opacity === 1;
        edge.opacity = Math.min(1, opacity + 0.25);
        edge.transparent = edge.opacity < 1;
      }
      draw();
    },
    light: (ids) => {
      for (const [id, { face, own }] of shown) face.color.copy(ids.has(id) ? HIGHLIGHT : own);
      draw();
    },
    cut: (axis, share) => {
      const normal: Point = axis === 0 ? [-1, 0, 0] : axis === 1 ? [0, 1, 0] : [0, 0, -1];
      clip.normal.set(...normal);
      const at = axis === undefined ? 0 : data.min[axis] + share * (data.max[axis] - data.min[axis]);
      clip.constant = axis === 1 ? -at : at;
      for (const { face, edge } of shown.values()) {
        const planes = axis === undefined ? [] : [clip];
        face.clippingPlanes = planes;
        edge.clippingPlanes = planes;
        face.needsUpdate = true;
        edge.needsUpdate = true;
      }
      draw();
    },
    theme: (background, line) => {
      scene.background = new Color(background);
      for (const { edge } of shown.values()) edge.color.set(line);
      draw();
    },
    pick: (x, y) => {
      const ray = new Raycaster();
      ray.setFromCamera(new Vector2(x, y), camera);
      const solid = ray
        .intersectObjects(
          [...shown.values()].filter(({ group }) => group.visible).flatMap(({ group }) => group.children),
        )
        .find(({ object, point }) => object instanceof Mesh && notCutAway(shown, object, point));
      return solid?.object.userData.id;
    },
    middleOf: (id) => {
      const found = shown.get(id);
      if (!found) return [middle.x, middle.y, middle.z];
      const solid = found.group.children[0] as Mesh;
      solid.geometry.computeBoundingSphere();
      const centre = solid.geometry.boundingSphere!.center.clone().add(found.group.position);
      return [centre.x, centre.y, centre.z];
    },
  };
  return stage;
}

function notCutAway(shown: ReadonlyMap<string, Shown>, object: Object3D, point: Vector3): boolean {
  const planes = shown.get(object.userData.id)?.face.clippingPlanes ?? [];
  return planes.every((plane) => plane.distanceToPoint(point) >= 0);
}

function shownPiece(piece: PreviewPiece): Shown {
  const own = new Color(piece.colour);
  const solid = new BufferGeometry();
  solid.setAttribute('position', new BufferAttribute(new Float32Array(bytes(piece.positions)), 3));
  solid.setIndex(new BufferAttribute(new Uint32Array(bytes(piece.triangles)), 1));
  const face = new MeshStandardMaterial({
    color: own.clone(),
    roughness: 0.85,
    flatShading: true,
    side: DoubleSide,
    polygonOffset: true,
    polygonOffsetFactor: 0.6,
    polygonOffsetUnits: 1,
  });
  const lines = new BufferGeometry();
  lines.setAttribute('position', new BufferAttribute(new Float32Array(bytes(piece.edges)), 3));
  const edge = new LineBasicMaterial({ color: '#2b2620' });
  const mesh = new Mesh(solid, face);
  mesh.userData.id = piece.id;
  const group = new Group();
  group.add(mesh, new LineSegments(lines, edge));
  return { piece, group, face, edge, own };
}

function bytes(base64: string): ArrayBuffer {
  const text = atob(base64);
  const out = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i += 1) out[i] = text.charCodeAt(i);
  return out.buffer;
}
