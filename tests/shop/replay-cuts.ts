import type { LaidStock, Outcome, Rect } from '../../src/shop/index.js';

const NEAR = 1e-6;

const same = (a: Rect, b: Rect): boolean =>
  (['x', 'y', 'length', 'width'] as const).every((side) => Math.abs(a[side] - b[side]) < NEAR);

/** What the saw leaves of one piece of stock when it follows the numbered cuts; throws where a cut cannot be made. */
export function replayCuts({ stock, cuts, parts, offcuts }: LaidStock, kerf: number): Map<string, Rect> {
  const bench: Rect[] = [{ x: 0, y: 0, length: stock.length, width: stock.width }];
  const done = new Map<string, Rect>();
  // stock that is a part as it is needs no cut
  if (cuts.length === 0 && parts.length === 1) return new Map([[parts[0]!.id, bench[0]!]]);
  cuts.forEach((cut, i) => {
    if (cut.number !== i + 1) throw new Error(`cut ${cut.number} stands in place ${i + 1}`);
    const at = bench.findIndex((piece) => same(piece, cut.piece));
    if (at < 0) throw new Error(`cut ${cut.number} is made on a piece that is not on the bench`);
    const { x, y, length, width } = bench.splice(at, 1)[0]!;
    const whole = cut.direction === 'rip' ? width : length;
    if (cut.at < -NEAR || cut.at > whole + NEAR) throw new Error(`cut ${cut.number} misses its piece`);
    const beyond = whole - cut.at - kerf;
    const sides: readonly (readonly [Outcome, Rect])[] =
      cut.direction === 'rip'
        ? [
            [cut.near, { x, y, length, width: cut.at }],
            [cut.far, { x, y: y + cut.at + kerf, length, width: beyond }],
          ]
        : [
            [cut.near, { x, y, length: cut.at, width }],
            [cut.far, { x: x + cut.at + kerf, y, length: beyond, width }],
          ];
    for (const [outcome, rect] of sides) {
      const wood = rect.length > NEAR && rect.width > NEAR;
      if (wood === (outcome.kind === 'nothing'))
        throw new Error(
          `cut ${cut.number} tells ${outcome.kind} where ${rect.length} × ${rect.width} is left`,
        );
      if (outcome.kind === 'part' || outcome.kind === 'offcut') done.set(outcome.id, rect);
      if (outcome.kind === 'piece') bench.push(rect);
    }
  });
  if (bench.length > 0) throw new Error(`${bench.length} pieces wait for a cut that is not listed`);
  const ids = [...parts, ...offcuts].map(({ id }) => id);
  if (ids.length !== done.size) throw new Error(`${done.size} pieces for ${ids.length} parts and offcuts`);
  return done;
}
