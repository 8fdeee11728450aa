/** Names as a sentence has them: `seat, leg and rail`. */
export const inARow = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
