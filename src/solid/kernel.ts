import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import { SolidError } from '../errors.js';
import type { Frame } from '../frame/index.js';
import type { Region } from '../profile/index.js';
import { leavingNoVectors, noteVectors } from './left-vectors.js';

/** A closed solid in the kernel's memory; only this folder looks inside. */
export type Body = Manifold;

/** The kernel and every body it made in one build; `dispose` frees them all. */
export interface Kernel {
  readonly wasm: ManifoldToplevel;
  readonly keep: (body: Body) => Body;
  /**
   * A body made once for all pieces of one shape. The kernel owns it: it lives as long as a build that asked for it, and after
   * the last of them until {@link BUILDS_KEPT} more have ended that did not, so that what stays as it is from one try to the next
   * is made once, and so is what comes back when a size is put back and another one tried.
   *
   * @param shape all that it is made from, told apart from every other shape
   */
  readonly shape: (shape: string, make: () => Body) => Body;
  readonly dispose: () => void;
}

let loaded: Promise<ManifoldToplevel> | undefined;

/** Builds that may end without asking for a shape before it is freed. */
export const BUILDS_KEPT = 4;

/** Shapes made once, how many running builds asked for each, and how many have ended since without asking. */
const known = new Map<string, { readonly body: Body; builds: number; idle: number }>();

async function load(wasmBinary: ArrayBuffer | undefined): Promise<ManifoldToplevel> {
  const { default: Module } = await import('manifold-3d');
  const wasm = await (Module as (given: object) => ReturnType<typeof Module>)(
    wasmBinary ? { wasmBinary } : {},
  );
  wasm.setup();
  noteVectors(wasm);
  return wasm;
}

/**
 * Starts a build. The WebAssembly module is loaded once a process; each build owns its bodies.
 *
 * @param wasmBinary `manifold.wasm`, for a page that cannot load it from beside the script; looked at on the first call
 */
export async function startKernel(wasmBinary?: ArrayBuffer): Promise<Kernel> {
  loaded ??= load(wasmBinary);
  const wasm = await loaded;
  const kept = new Set<Body>();
  const asked = new Set<string>();
  return {
    wasm,
    keep: (body) => {
      kept.add(body);
      return body;
    },
    shape: (shape, make) => {
      const found = known.get(shape) ?? { body: make(), builds: 0, idle: 0 };
      if (!asked.has(shape)) found.builds += 1;
      found.idle = 0;
      known.set(shape, found);
      asked.add(shape);
      return found.body;
    },
    dispose: () => {
      for (const body of kept) body.delete();
      kept.clear();
      for (const [shape, one] of known) {
        if (asked.has(shape)) one.builds -= 1;
        else if (one.builds === 0) {
          one.idle += 1;
          if (one.idle < BUILDS_KEPT) continue;
          one.body.delete();
          known.delete(shape);
        }
      }
      asked.clear();
    },
  };
}

/** A frame as the kernel's column-major matrix. */
export const matrix = (f: Frame): Mat4 => [...f.x, 0, ...f.y, 0, ...f.z, 0, ...f.origin, 1] as Mat4;

type Mat4 = Parameters<Manifold['transform']>[0];

/** A prism over a region, from z = from to z = to (mm), standing in a frame. The caller owns it. */
export function prism(
  kernel: Kernel,
  region: Region,
  from: number,
  to: number,
  place: Frame | undefined,
  endScale = 1,
): Body {
  if (!(Number.isFinite(from) && Number.isFinite(to) && to > from)) {
    throw new SolidError('prism-height', `a prism from ${from} to ${to} mm has no height`);
  }
  const loops = region.map((loop) => loop.map(([x, y]): [number, number] => [x, y]));
  if (loops.some((loop) => loop.some(([x, y]) => !Number.isFinite(x) || !Number.isFinite(y)))) {
    throw new SolidError('prism-outline', 'an outline holds a coordinate that is not a number');
  }
  const shape = `${to - from} ${endScale} ${loops.join(' ')}`;
  const upright = kernel.shape(shape, () => extruded(kernel, loops, to - from, endScale));
  const raised = upright.translate([0, 0, from]);
  if (!place) return raised;
  const placed = raised.transform(matrix(place));
  raised.delete();
  return placed;
}

/** The kernel's own shorthand for this leaves the cross-section it makes in memory for ever. */
const extruded = ({ wasm }: Kernel, loops: [number, number][][], height: number, endScale: number): Body =>
  leavingNoVectors(() => {
    const section = new wasm.CrossSection(loops, 'Positive');
    try {
      return section.extrude(height, 0, 0, [endScale, endScale]);
    } finally {
      section.delete();
    }
  });
