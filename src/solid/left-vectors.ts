import type { ManifoldToplevel } from 'manifold-3d';

/** Something in the kernel's memory that stays until it is deleted. */
interface Handle {
  isDeleted(): boolean;
  delete(): void;
}

/** What the library makes on its way between outlines and arrays, and has no types for. */
interface Inner {
  Vector_vec2: new () => Handle;
  readonly Vector2_vec2: { readonly prototype: { get(at: number): Handle } };
  readonly CrossSection: { readonly prototype: { _ToPolygons(): Handle } };
}

const noted = new Set<Handle>();

const note = (made: Handle): Handle => {
  noted.add(made);
  return made;
};

/**
 * Has the vectors of points noted that the library makes for an outline and leaves in memory: a few kilobytes an outline, some
 * 15 kB a verdict, for ever.
 */
export function noteVectors(wasm: ManifoldToplevel): void {
  const inner = wasm as unknown as Inner;
  const { Vector_vec2: Points, Vector2_vec2, CrossSection } = inner;
  inner.Vector_vec2 = new Proxy(Points, { construct: (kind) => note(new kind()) });
  const { get } = Vector2_vec2.prototype;
  Vector2_vec2.prototype.get = function (at) {
    return note(get.call(this, at));
  };
  // the library's constructor stands before the one whose sections have it
  const section = Object.getPrototypeOf(CrossSection.prototype) as Inner['CrossSection']['prototype'];
  const { _ToPolygons: toPolygons } = section;
  section._ToPolygons = function () {
    return note(toPolygons.call(this));
  };
}

/** Work with outlines in the kernel, after which no vector is left of it. */
export function leavingNoVectors<T>(work: () => T): T {
  try {
    return work();
  } finally {
    for (const one of noted) if (!one.isDeleted()) one.delete();
    noted.clear();
  }
}
