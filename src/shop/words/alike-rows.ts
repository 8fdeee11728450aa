/** Rows that differ in their first cell alone become one, the first cells together: `C1, C2`. */
export function alikeRows(rows: readonly (readonly string[])[]): readonly (readonly string[])[] {
  const found = new Map<string, string[]>();
  for (const [first = '', ...rest] of rows) {
    const key = rest.join('\n');
    found.set(key, [...(found.get(key) ?? []), first]);
  }
  return rows.flatMap(([first = '', ...rest]) => {
    const together = found.get(rest.join('\n'))!;
    return together[0] === first ? [[[...new Set(together)].join(', '), ...rest]] : [];
  });
}
