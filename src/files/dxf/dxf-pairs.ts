/** One group of a DXF file: its code and its value, both as text without padding. */
export type Pair = readonly [code: string, value: string];

/** The groups of a DXF text: a line with the code, a line with the value. */
export function pairsOf(text: string): Pair[] {
  const lines = text.split(/\r?\n/);
  const pairs: Pair[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) pairs.push([lines[i]!.trim(), lines[i + 1]!]);
  return pairs;
}

/** The groups as DXF text. */
export const textOf = (pairs: readonly Pair[]): string =>
  `${pairs.map(([code, value]) => `${code.padStart(3)}\n${value}`).join('\n')}\n`;

/** The groups with a header variable set, added when the header does not have it. */
export function withHeader(pairs: readonly Pair[], name: string, code: string, value: string): Pair[] {
  const at = pairs.findIndex((pair) => pair[0] === '9' && pair[1] === name);
  if (at >= 0) return [...pairs.slice(0, at + 1), [code, value], ...pairs.slice(at + 2)];
  const header = pairs.findIndex((pair) => pair[0] === '2' && pair[1] === 'HEADER');
  return [...pairs.slice(0, header + 1), ['9', name], [code, value], ...pairs.slice(header + 1)];
}

/** A section split into what stands before its content, its content, and what comes after (from its `ENDSEC` on). */
export function sectionOf(
  pairs: readonly Pair[],
  name: string,
): { before: Pair[]; content: Pair[]; after: Pair[] } {
  const start = pairs.findIndex(
    (pair, i) => pair[0] === '2' && pair[1] === name && pairs[i - 1]?.[1] === 'SECTION',
  );
  const end = pairs.findIndex((pair, i) => i > start && pair[0] === '0' && pair[1] === 'ENDSEC');
  if (start < 0 || end < 0) throw new RangeError(`the DXF text has no section ${name}`);
  return {
    before: pairs.slice(0, start + 1),
    content: pairs.slice(start + 1, end),
    after: pairs.slice(end),
  };
}

/** The content of a section as entities, each beginning with its `0` group. */
export function entitiesOf(content: readonly Pair[]): Pair[][] {
  const entities: Pair[][] = [];
  for (const pair of content) {
    if (pair[0] === '0') entities.push([pair]);
    else entities.at(-1)?.push(pair);
  }
  return entities;
}
