import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DoubleSide,
  Group,
  type LineBasicMaterial,
  LineSegments,
  Mesh,
  ShaderMaterial,
  ShapeUtils,
  Vector2,
} from 'three';
import type { Point, PreviewPiece } from '../told/index.js';
import { sliceLoops } from './slice.js';

/** A section plane, n·p = at; what lies beyond it is cut away. `u × v = normal`. mm, assembly frame. */
export interface SectionPlane {
  readonly normal: Point;
  readonly u: Point;
  readonly v: Point;
  readonly at: number;
}

/** The face a section plane leaves on a piece: filled, hatched and outlined. */
export interface Cap {
  readonly object: Group;
  /** @param plane in the piece's own place; undefined for none */
  readonly cut: (plane: SectionPlane | undefined) => void;
  readonly tint: (colour: Color) => void;
  readonly dispose: () => void;
}

// lines slant with the picture, not with the piece, as on a drawing
const HATCH = `
uniform vec3 colour; uniform float slant; uniform float pitch;
void main() {
  float across = mod(gl_FragCoord.x + slant * gl_FragCoord.y, pitch);
  float line = 1.0 - smoothstep(0.9, 1.9, abs(across - pitch / 2.0));
  gl_FragColor = vec4(mix(colour, colour * 0.35, line), 1.0);
  #include <colorspace_fragment>
}`;

const PLACE = `
void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }`;

export function capOf(
  piece: PreviewPiece,
  positions: Float32Array,
  triangles: ArrayLike<number>,
  edge: LineBasicMaterial,
  index: number,
): Cap {
  const uniforms = {
    colour: { value: new Color(piece.colour) },
    slant: { value: index % 2 === 0 ? 1 : -1 },
    pitch: { value: piece.role === 'board' ? 13 : 8 },
  };
  const hatched = new ShaderMaterial({
    uniforms,
    vertexShader: PLACE,
    fragmentShader: HATCH,
    side: DoubleSide,
    polygonOffset: true,
    polygonOffsetFactor: 0.6,
    polygonOffsetUnits: 1,
  });
  // not the edges' own: those are cut by the plane the outline lies in
  const line = edge.clone();
  const object = new Group();
  const clear = (): void => {
    for (const child of object.children) (child as Mesh).geometry.dispose();
    object.clear();
  };
  return {
    object,
    dispose: () => {
      clear();
      hatched.dispose();
      line.dispose();
    },
    tint: (colour) => {
      uniforms.colour.value.copy(colour).lerp(new Color('#ffffff'), 0.18);
      line.color.copy(edge.color);
    },
    cut: (plane) => {
      clear();
      if (!plane) return;
      const loops = sliceLoops(positions, triangles, plane.normal, plane.at);
      if (loops.length === 0) return;
      const filled = new Mesh(filledLoops(loops, plane), hatched);
      filled.userData.id = piece.id;
      object.add(filled, new LineSegments(outlines(loops), line));
    },
  };
}

function outlines(loops: readonly (readonly Point[])[]): BufferGeometry {
  const ends = loops.flatMap((loop) => loop.flatMap((p, i) => [...p, ...loop[(i + 1) % loop.length]!]));
  return new BufferGeometry().setAttribute('position', new BufferAttribute(new Float32Array(ends), 3));
}

/** The area between loops: each clockwise one is a hole of the smallest loop round it. */
function filledLoops(loops: readonly (readonly Point[])[], { u, v }: SectionPlane): BufferGeometry {
  const flat = loops.map((loop) => {
    const points = loop.map((p) => new Vector2(dot(p, u), dot(p, v)));
    return { loop, points, area: ShapeUtils.area(points), holes: [] as number[] };
  });
  flat.forEach((hole, i) => {
    if (hole.area > 0) return;
    const around = flat
      .filter(({ area, points }) => area > -hole.area && inside(hole.points[0]!, points))
      .sort((one, other) => one.area - other.area)[0];
    around?.holes.push(i);
  });
  const corners: number[] = [];
  for (const outer of flat) {
    if (outer.area <= 0) continue;
    const all = [outer, ...outer.holes.map((i) => flat[i]!)];
    const at = all.flatMap(({ loop }) => loop);
    const faces = ShapeUtils.triangulateShape(
      outer.points,
      outer.holes.map((i) => flat[i]!.points),
    );
    for (const face of faces) for (const corner of face) corners.push(...at[corner]!);
  }
  return new BufferGeometry().setAttribute('position', new BufferAttribute(new Float32Array(corners), 3));
}

const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Even-odd rule. */
function inside({ x, y }: Vector2, loop: readonly Vector2[]): boolean {
  let odd = false;
  loop.forEach((a, i) => {
    const b = loop[(i + 1) % loop.length]!;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) odd = !odd;
  });
  return odd;
}
