/** Where a word stands in a file: line and column, both counted from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** Something told in a file, and where its first letter stands. */
export interface Told<T> {
  readonly value: T;
  readonly at: Place;
}

/** A part of told words, with its own place. `from` counts letters from 0. @example partOf(told, 6, 9) */
export const partOf = ({ value, at }: Told<string>, from: number, to?: number): Told<string> => {
  const part = value.slice(from, to);
  const lead = part.length - part.trimStart().length;
  return { value: part.trim(), at: { line: at.line, column: at.column + from + lead } };
};
