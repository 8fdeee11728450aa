import type { ManifoldToplevel } from 'manifold-3d';
import { startKernel } from '../../src/solid/index.js';

interface Handle {
  isDeleted(): boolean;
}

/** Every body, cross-section and vector the kernel handed out since it is watched, with what handed it out last. */
const handedOut = new Map<Handle, string>();

/** What handed out each thing that is not freed. */
export const left = (of: (thing: object) => boolean = () => true): string[] =>
  [...handedOut].filter(([one]) => !one.isDeleted() && of(one)).map(([, by]) => by);

/** How many were handed out since {@link handedOutAnew}. */
export const handedOutSince = (): number => handedOut.size;

/** Looks only at what is handed out from now on. */
export const handedOutAnew = (): void => handedOut.clear();

let watched: ManifoldToplevel | undefined;

/** Notes whatever the kernel hands out from now on. */
export async function watchKernel(): Promise<void> {
  const kernel = await startKernel();
  const { wasm } = kernel;
  const { Manifold, CrossSection } = wasm;
  const cube = Manifold.cube([1, 1, 1]);
  const cut = cube.slice(0);
  if (watched !== wasm) {
    const { Vector2_vec2: Vectors } = wasm as unknown as { Vector2_vec2: { prototype: object } };
    for (const of of [cube, cut]) watch(Object.getPrototypeOf(of) as object, wasm);
    watch(Vectors.prototype, wasm);
    for (const kind of [Manifold, CrossSection]) watch(kind, wasm);
    watch(wasm, wasm);
    watched = wasm;
  }
  cube.delete();
  cut.delete();
  kernel.dispose();
}

function note(name: string, result: unknown, { Manifold, CrossSection }: ManifoldToplevel): void {
  for (const one of Array.isArray(result) ? result : [result]) {
    // vectors of the library's own have no types, but can be added to
    const vector = one instanceof Object && 'push_back' in one;
    if (vector || one instanceof Manifold || one instanceof CrossSection)
      handedOut.set(one as unknown as Handle, name);
  }
}

function watch(owner: object, wasm: ManifoldToplevel): void {
  for (const name of Object.getOwnPropertyNames(owner)) {
    const own = Object.getOwnPropertyDescriptor(owner, name);
    if (name === 'constructor' || typeof own?.value !== 'function' || !own.writable) continue;
    const was = own.value as (...args: unknown[]) => unknown;
    Object.defineProperty(owner, name, {
      ...own,
      value: new Proxy(was, {
        apply(target, self, args) {
          const result = Reflect.apply(target, self, args);
          note(name, result, wasm);
          return result;
        },
        construct(target, args, newTarget) {
          const result = Reflect.construct(target, args, newTarget) as object;
          note(`new ${name}`, result, wasm);
          return result;
        },
      }),
    });
  }
}
