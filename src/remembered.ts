/**
 * Work remembered by what it depends on, the latest first; what was not asked for longest is forgotten.
 *
 * @param most results kept at once: a page that lives long must not keep every design it ever saw
 */
export function remembered<T extends object>(most: number): (key: string, work: () => T) => T {
  const known = new Map<string, T>();
  return (key, work) => {
    const found = known.get(key) ?? work();
    known.delete(key);
    known.set(key, found);
    if (known.size > most) known.delete(known.keys().next().value!);
    return found;
  };
}

const numbers = new WeakMap<object, number>();
let last = 0;

/** A number of its own for each thing that is large and never changes, to stand for it in a key. */
export function numberOf(thing: object): number {
  const found = numbers.get(thing);
  if (found !== undefined) return found;
  last += 1;
  numbers.set(thing, last);
  return last;
}
