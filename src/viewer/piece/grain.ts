import { Matrix4, type MeshLambertMaterial, Vector3 } from 'three';
import type { PreviewBox } from '../told/index.js';

/**
 * Wood as if it were sawn from a log: rings round a pith that runs along the board beneath it. Faces, edges and end grain
 * follow from the one log by themselves. Where lines would be finer than the picture's dots they fade.
 */
const GRAIN = `
uniform vec2 pith; uniform float log;
varying vec3 inBoard;
float chance(vec3 p) { p = fract(p * vec3(0.1031, 0.1130, 0.0973)); p += dot(p, p.yzx + 33.33); return fract((p.x + p.y) * p.z); }
float cloud(vec3 p) {
  vec3 i = floor(p), f = fract(p); f = f * f * (3.0 - 2.0 * f);
  vec2 e = vec2(0.0, 1.0);
  return mix(mix(mix(chance(i), chance(i + e.yxx), f.x), mix(chance(i + e.xyx), chance(i + e.yyx), f.x), f.y),
             mix(mix(chance(i + e.xxy), chance(i + e.yxy), f.x), mix(chance(i + e.xyy), chance(i + e.yyy), f.x), f.y), f.z);
}
float grain() {
  vec3 p = inBoard;
  vec3 across = cross(dFdx(p), dFdy(p));
  float end = smoothstep(0.75, 0.95, abs(across.x) / max(length(across), 1e-9));
  vec2 fromPith = p.yz - pith - vec2(7.0, 4.0) * sin(vec2(p.x / 260.0 + log, p.x / 190.0 - log));
  float ring = (length(fromPith) + 5.0 * cloud(vec3(p.x / 170.0, p.yz / 45.0) + log) + p.x / 90.0) / 4.2;
  float year = fract(ring);
  float late = smoothstep(0.25, 0.85, year) * (1.0 - smoothstep(0.9, 1.0, year));
  float seen = 1.0 - smoothstep(0.15, 0.55, fwidth(ring));
  float near = 1.0 - smoothstep(0.3, 1.2, max(fwidth(p.y), fwidth(p.z)) / 0.8);
  // what is not seen is not reckoned
  float fine = near > 0.0 && end < 1.0 ? cloud(vec3(p.x / 26.0, p.yz / 0.8) + log) : 0.5;
  float pores = near > 0.0 && end > 0.0 ? cloud(vec3(p.x, p.yz / 0.5) + log) : 0.5;
  float along = 1.0 - 0.13 * (late - 0.35) * seen - 0.09 * (fine - 0.5) * near;
  float ends = 0.84 - 0.2 * (late - 0.35) * seen - 0.16 * (pores - 0.5) * near;
  return mix(along, ends, end);
}
`;

/** Gives a board's faces their grain, along its length. */
export function withGrain(face: MeshLambertMaterial, { corner, sides }: PreviewBox, index: number): void {
  const [x, y, z] = sides.map(({ along }) => new Vector3(...along)) as [Vector3, Vector3, Vector3];
  const toBoard = new Matrix4()
    .makeBasis(x, y, z)
    .setPosition(...corner)
    .invert();
  // a log for each board, the same each time
  const own = (part: number): number => ((index + 1) * part) % 1;
  const pith = { x: (0.2 + 0.6 * own(0.618)) * sides[1].mm, y: -25 - 60 * own(0.414) };
  face.onBeforeCompile = (shader) => {
    Object.assign(shader.uniforms, {
      toBoard: { value: toBoard },
      pith: { value: pith },
      log: { value: 10 * own(0.732) },
    });
    shader.vertexShader = `uniform mat4 toBoard; varying vec3 inBoard;\n${shader.vertexShader}`.replace(
      '#include <begin_vertex>',
      '#include <begin_vertex>\ninBoard = (toBoard * vec4(position, 1.0)).xyz;',
    );
    shader.fragmentShader = `${GRAIN}${shader.fragmentShader}`.replace(
      '#include <color_fragment>',
      '#include <color_fragment>\ndiffuseColor.rgb *= grain();',
    );
  };
  face.customProgramCacheKey = () => 'grain';
}
