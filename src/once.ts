/** The same value, worked out when it is first asked for. */
export function once<T extends object>(work: () => T): () => T {
  let worked: T | undefined;
  return () => {
    worked ??= work();
    return worked;
  };
}
