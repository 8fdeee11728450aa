import { Box3, Color, Raycaster, Scene, Sphere, Vector3 } from 'three';
import type { SectionPlane } from '../piece/index.js';
import {
  type Arrangement,
  arrangePieces,
  boxOf,
  isSamePiece,
  lightPieces,
  pieceMet,
  type ShownPiece,
  type Spot,
  sectionThrough,
  shownPiece,
  spotUnder,
  visibleBox,
} from '../piece/index.js';
import type { Point, PreviewData } from '../told/index.js';
import { isFlat, VIEWS, type ViewName } from '../told/index.js';
import { drawingLoop } from './drawing-loop.js';
import { type Eye, eyeOf } from './eye.js';
import { floorGrid } from './floor-grid.js';
import { stageLamps } from './stage-lamps.js';
import { TwoWayCamera } from './two-way-camera.js';

/** The solids on a canvas: drawn when something changed, never in an endless loop. Lengths mm, angles radians. */
export interface Stage extends Omit<Eye, 'flyTo'> {
  readonly canvas: HTMLCanvasElement;
  readonly view: (name: ViewName) => void;
  /** @param gap what is measured there: it is looked at from beside */
  readonly flyTo: (at: Point, round: number, gap?: Way) => void;
  readonly flyToPieces: (ids: readonly string[]) => void;
  readonly arrange: (how: Arrangement) => void;
  readonly light: (chosen: ReadonlySet<string>, hovered: ReadonlySet<string>) => void;
  readonly cut: (plane: SectionPlane | undefined) => void;
  readonly theme: (looks: Looks) => void;
  /** Takes new pieces in place of those it has; the eye stays. They stand together until they are arranged anew. */
  readonly show: (data: PreviewData) => void;
  /** The piece under a point of the canvas, in its own pixels. */
  readonly pick: (x: number, y: number) => string | undefined;
  /** The spot under a place of the picture; what is nearer than `reach` is meant, in pixels. */
  readonly spot: (x: number, y: number, reach: number, through: boolean) => Spot | undefined;
  /** Where a point stands in the picture, in the canvas's own pixels. */
  readonly pixel: (at: Point) => readonly [x: number, y: number];
  /** Called after every picture. */
  readonly afterDraw: (then: () => void) => void;
  /** Redraws. */
  readonly draw: () => void;
  /** Redraws at once. */
  readonly drawNow: () => void;
}

interface Way {
  readonly from: Point;
  readonly to: Point;
}

export interface Looks {
  readonly background: string;
  readonly edge: string;
  readonly floor: string;
}

/** @throws Error when the browser has no WebGL */
export function openStage(canvas: HTMLCanvasElement, data: PreviewData): Stage {
  const shown = new Map<string, ShownPiece>();
  const whole = new Box3();
  const ball = new Sphere();
  const floor = floorGrid(whole);
  const scene = new Scene();
  scene.add(floor, ...stageLamps());
  const old: (() => void)[] = [];
  const show = ({ pieces }: PreviewData): void => {
    const before = new Map(shown);
    shown.clear();
    pieces.forEach((piece, i) => {
      const own = before.get(piece.id);
      const same = own && isSamePiece(own.piece, piece);
      shown.set(piece.id, same ? own : shownPiece(piece, i));
      if (same) before.delete(piece.id);
    });
    for (const { group, dispose } of before.values()) {
      scene.remove(group);
      old.push(dispose);
    }
    const all = [...shown.values()];
    scene.add(...all.map(({ group }) => group));
    whole.copy(all.reduce((sum, { box }) => sum.union(box), new Box3()));
    whole.getBoundingSphere(ball);
    floor.geometry.dispose();
    floor.geometry = floorGrid(whole).geometry;
    canvas.dataset.triangles = String(all.reduce((sum, one) => sum + one.triangles, 0));
  };
  show(data);
  const camera = new TwoWayCamera(30, 1, 1, 10_000);
  camera.up.set(0, 0, 1);
  let grounded = true;
  const { controls, draw, drawNow, afterDraw } = drawingLoop(canvas, scene, camera, ball, () => {
    floor.visible = grounded && camera.position.z > whole.min.z;
  });
  // the graphics programs of pieces that left are those of the new ones: freed sooner, they would be made anew
  afterDraw(() => {
    for (const dispose of old.splice(0)) dispose();
  });
  const eye = eyeOf(canvas, camera, controls, draw);
  const section = sectionThrough(shown);
  let looks: Looks | undefined;
  const theme = (to: Looks): void => {
    looks = to;
    scene.background = new Color(to.background);
    floor.material.color.set(to.floor);
    for (const { edge, cap, face } of shown.values()) {
      edge.color.set(to.edge);
      cap.tint(face.color);
    }
    draw();
  };
  // through the near and the far end of what is seen there: right in perspective and flat alike
  const rayThrough = (x: number, y: number): Raycaster => {
    const [right, up] = [(2 * x) / canvas.clientWidth - 1, 1 - (2 * y) / canvas.clientHeight];
    const from = new Vector3(right, up, -1).unproject(camera);
    const to = new Vector3(right, up, 1).unproject(camera);
    return new Raycaster(from, to.sub(from).normalize());
  };
  const pixel = (at: Point): readonly [x: number, y: number] => {
    const { x, y } = new Vector3(...at).project(camera);
    return [((1 + x) * canvas.clientWidth) / 2, ((1 - y) * canvas.clientHeight) / 2];
  };
  return {
    ...eye,
    canvas,
    draw,
    drawNow,
    afterDraw,
    view: (name) => {
      const seen = visibleBox(shown).getBoundingSphere(new Sphere());
      const { center, radius } = seen.radius < 0 ? ball : seen;
      eye.flyTo(center, radius, new Vector3(...VIEWS[name]), isFlat(name));
    },
    flyTo: (at, round, gap) => {
      const away = camera.position.clone().sub(controls.target);
      eye.flyTo(new Vector3(...at), round, gap ? besideOf(gap, away) : away);
    },
    flyToPieces: (ids) => {
      const { center, radius } = boxOf(shown, ids).getBoundingSphere(new Sphere());
      if (radius > 0) eye.flyTo(center, 1.25 * radius);
    },
    arrange: (how) => {
      arrangePieces(shown, how);
      // nothing hangs below the floor it stands on
      grounded = visibleBox(shown).min.z > whole.min.z - 1;
      section.recut();
      draw();
    },
    light: (chosen, hovered) => {
      lightPieces(shown, chosen, hovered);
      draw();
    },
    cut: (plane) => {
      section.put(plane);
      draw();
    },
    theme,
    show: (to) => {
      show(to);
      if (looks) theme(looks);
    },
    pick: (x, y) => pieceMet(shown, rayThrough(x, y), section.keeps),
    spot: (x, y, reach, through) => {
      const sight = { ray: rayThrough, pixel, keeps: section.keeps };
      return spotUnder(shown, sight, x, y, reach, through);
    },
    pixel,
  };
}

/** The direction nearest to the one it is seen from now in which a way is not seen end on. */
function besideOf({ from, to }: Way, away: Vector3): Vector3 {
  const way = new Vector3(...to).sub(new Vector3(...from)).normalize();
  const beside = away.clone().addScaledVector(way, -away.dot(way));
  if (beside.length() > 0.2 * away.length()) return beside;
  return new Vector3(0, 0, 1).cross(way).add(new Vector3(0, 0, 0.1));
}
