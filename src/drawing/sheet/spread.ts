/**
 * Moves places on a line as little as need be until neighbours are at least a distance apart (least squares, in order).
 *
 * @param places ascending
 */
export function spread(places: readonly number[], apart: number): readonly number[] {
  // each group is moved as one: its places less i × apart have one mean
  const groups: { sum: number; count: number }[] = [];
  places.forEach((place, i) => {
    groups.push({ sum: place - i * apart, count: 1 });
    for (;;) {
      const [before, last] = [groups.at(-2), groups.at(-1)!];
      if (!before || before.sum / before.count <= last.sum / last.count) return;
      groups.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  });
  return groups
    .flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count))
    .map((mean, i) => mean + i * apart);
}
