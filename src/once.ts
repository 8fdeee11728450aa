/** A value that is worked out when it is first asked for, and kept. */
export function once<T extends object>(work: () => T): () => T {
  let worked: T | undefined;
  return () => {
    worked ??= work();
    return worked;
  };
}

/** Work on a thing that never changes, done once for each such thing while it is in use. */
export function onceForEach<Thing extends object, T extends object>(
  work: (thing: Thing) => T,
): (thing: Thing) => T {
  const known = new WeakMap<Thing, T>();
  return (thing) => {
    const found = known.get(thing) ?? work(thing);
    known.set(thing, found);
    return found;
  };
}
