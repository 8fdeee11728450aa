/** A seam keeps this far off a mortise or a hole, mm. */
const SEAM_CLEAR = 6;

/** A frame is never narrower than this where there is a choice, mm: too narrow to handle. */
const LEAST_FRAME = 40;

/** A seam through something costs as much as this many mm out of the even place. */
const THROUGH = 10_000;

/**
 * Where a drawing is parted along one axis: as few pieces as can be, each at most `pitch` long; seams stand near even
 * places, but off what must not be parted. One piece more is taken when only that keeps all seams off.
 *
 * @param avoid ranges along the axis that seams keep {@link SEAM_CLEAR} off, mm
 * @returns both ends and the seams between them, ascending
 */
export function seamsAlong(
  from: number,
  to: number,
  pitch: number,
  avoid: readonly (readonly [number, number])[],
): readonly number[] {
  const least = Math.max(1, Math.ceil((to - from) / pitch - 1e-9));
  const plans = [least, least + 1].map((count) => parted(from, to, pitch, count, avoid));
  const [few, more] = [plans[0]!, plans[1]!];
  return few.cost >= THROUGH && more.cost < THROUGH ? more.seams : few.seams;
}

interface Parted {
  readonly cost: number;
  readonly seams: readonly number[];
}

/** The cheapest seams on a grid of whole mm, each with the cheapest that lead up to it. */
function parted(
  from: number,
  to: number,
  pitch: number,
  count: number,
  avoid: readonly (readonly [number, number])[],
): Parted {
  const size = to - from;
  const smallest = Math.min(LEAST_FRAME, size / count - 1);
  const costOf = (at: number, k: number): number => {
    const through = avoid.filter(([a, b]) => at > a - SEAM_CLEAR && at < b + SEAM_CLEAR).length;
    return through * THROUGH + Math.abs(at - (from + (k * size) / count));
  };
  let reached: readonly Parted[] = [{ cost: 0, seams: [from] }];
  for (let k = 1; k < count; k += 1) {
    // what is left must still fit into the pieces that are left
    const first = Math.ceil(Math.max(size - (count - k) * pitch, k * smallest));
    const last = Math.floor(Math.min(k * pitch, size - (count - k) * smallest));
    const next: Parted[] = [];
    for (let step = first; step <= last; step += 1) {
      const at = from + step;
      let best: Parted | undefined;
      for (const one of reached) {
        const run = at - one.seams.at(-1)!;
        if (run > pitch + 1e-9 || run < smallest - 1) continue;
        if (best === undefined || one.cost < best.cost) best = one;
      }
      if (best) next.push({ cost: best.cost + costOf(at, k), seams: [...best.seams, at] });
    }
    reached = next;
  }
  const ends = reached.filter(({ seams }) => to - seams.at(-1)! <= pitch + 1e-9);
  const best = ends.reduce<Parted | undefined>(
    (one, other) => (one && one.cost <= other.cost ? one : other),
    undefined,
  );
  return best
    ? { cost: best.cost, seams: [...best.seams, to] }
    : // the grid of whole mm has no place left: even pieces
      {
        cost: Number.POSITIVE_INFINITY,
        seams: Array.from({ length: count + 1 }, (_, i) => from + (i * size) / count),
      };
}
