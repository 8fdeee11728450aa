/** A value that is worked out when it is first asked for, and kept. */
export function once<T extends object>(work: () => T): () => T {
  let worked: T | undefined;
  return () => {
    worked ??= work();
    return worked;
  };
}
