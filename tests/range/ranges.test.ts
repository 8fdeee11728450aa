import fc from 'fast-check';
import { expect, test } from 'vitest';
import { speaker } from '../../src/length/index.js';
import {
  type Answer,
  type At,
  type Dimension,
  type Glance,
  type Judge,
  KeptAnswers,
  rangePaper,
  rangesOf,
  type Wanted,
  workShare,
} from '../../src/range/index.js';
import { seed } from '../properties/seed.js';

const SOUND: Answer = { sound: true };
const WRONG: Answer = { sound: false, code: 'wall-thin', text: 'a wall is too thin: take thicker wood' };

const size = (name: string, value: number, least: number, most: number, step = 0.5): Dimension => ({
  name,
  label: name,
  kind: step === 1 ? 'count' : 'length',
  value,
  least,
  most,
  step,
});

/** A verdict that depends on the values alone. */
const judged =
  (sound: (at: At) => boolean): Judge =>
  async (at) =>
    sound(at) ? SOUND : WRONG;

const SAME: Glance = () => '';
const quiet = () => {};
const only = (...dimensions: Dimension[]): Wanted => ({ dimensions, across: undefined, together: undefined });

test('for all limits both ends are found to a step, with a verdict on either side of each', async () => {
  const limits = fc.record({
    value: fc.integer({ min: 400, max: 1600 }),
    down: fc.integer({ min: 1, max: 999 }),
    up: fc.integer({ min: 1, max: 999 }),
    off: fc.integer({ min: 0, max: 9 }),
  });
  await fc.assert(
    fc.asyncProperty(limits, async ({ value: tenths, down, up, off }) => {
      const value = tenths / 10 + off / 100;
      const [from, to] = [Math.max(10, value - down / 10), Math.min(200, value + up / 10)];
      const asked: number[] = [];
      const judge = judged(({ height }) => {
        asked.push(height!);
        return height! >= from && height! <= to;
      });
      const { alone } = await rangesOf(only(size('height', value, 10, 200)), judge, SAME, quiet);
      const [{ span, below, above }] = alone as [(typeof alone)[0]];
      expect(span.from).toBeGreaterThanOrEqual(from);
      expect(span.to).toBeLessThanOrEqual(to);
      // the next round figure is beyond the limit, and was tried
      if (below) expect([span.from - below.value <= 0.5 + 1e-9, below.value < from]).toEqual([true, true]);
      else expect(span.from).toBe(10);
      if (above) expect([above.value - span.to <= 0.5 + 1e-9, above.value > to]).toEqual([true, true]);
      else expect(span.to).toBe(200);
      for (const end of [
        span.from,
        span.to,
        ...(below ? [below.value] : []),
        ...(above ? [above.value] : []),
      ])
        expect(end === value || asked.includes(end)).toBe(true);
    }),
    seed(200),
  );
});

test('a hole in the middle of a range is found where the data alone change, and what is sound behind it is told', async () => {
  const hole = ({ height }: At) => height! > 131 && height! < 133.2;
  // a hole narrower than what is looked at by full verdicts: the data alone hint at a wider one
  const glance: Glance = ({ height }) => (height! > 126 && height! < 136 ? 'wall-thin' : '');
  const { alone } = await rangesOf(
    only(size('height', 100, 50, 200)),
    judged((at) => !hole(at)),
    glance,
    quiet,
  );
  expect(alone[0]!.span).toEqual({ from: 50, to: 200 });
  const seen = await rangesOf(
    only(size('height', 100, 50, 200)),
    judged(({ height }) => height! <= 126 || height! >= 136),
    glance,
    quiet,
  );
  expect(seen.alone[0]!.span).toEqual({ from: 50, to: 126 });
  expect(seen.alone[0]!.again).toEqual([{ from: 136, to: 200 }]);
  expect(seen.alone[0]!.above).toMatchObject({ value: 126.5, code: 'wall-thin' });
});

/** Two slopes and a bay: no dimension's limit is the same everywhere. */
const shore = ({ height = 100, rake = 10, count = 2 }: At) =>
  height + 3 * rake < 190 && !(height > 120 && rake < 6) && count * 20 < height;
const three = [size('height', 100, 40, 200), size('rake', 10, 0, 30), size('count', 2, 1, 6, 1)] as const;
const whole: Wanted = { dimensions: three, across: [three[0], three[1]], together: 300, mapSize: 20 };

test('every place of a map that was tried is as judged, every border lies within a step, and what was not tried is said', async () => {
  const { map } = await rangesOf(whole, judged(shore), SAME, quiet);
  let tried = 0;
  for (const [j, rake] of map!.rows.entries())
    for (const [i, height] of map!.columns.entries()) {
      const cell = map!.cells[j]![i]!;
      if (cell.tried) expect(cell.answer.sound).toBe(shore({ height, rake }));
      tried += Number(cell.tried);
    }
  expect(tried).toBeLessThan(map!.rows.length * map!.columns.length);
  for (const { sound, unsound } of map!.borders) {
    expect(shore({ height: sound[0], rake: sound[1] })).toBe(true);
    expect(shore({ height: unsound[0], rake: unsound[1] })).toBe(false);
    expect(Math.hypot(sound[0] - unsound[0], sound[1] - unsound[1])).toBeLessThanOrEqual(0.5 + 1e-9);
  }
  expect(map!.borders.length).toBeGreaterThan(20);
});

test('no random design inside the limits of all together had an error, and the paper tells how many were tried', async () => {
  const asked: At[] = [];
  const ranges = await rangesOf(
    whole,
    judged((at) => {
      asked.push(at);
      return shore(at);
    }),
    SAME,
    quiet,
  );
  const { limits, tried } = ranges.together!;
  const inside = asked.filter((at) =>
    limits.every(
      ({ dimension: { name, value }, from, to }) => (at[name] ?? value) >= from && (at[name] ?? value) <= to,
    ),
  );
  expect(inside.every(shore)).toBe(true);
  const all = inside.filter((at) => Object.keys(at).length === three.length);
  expect([tried, all.length]).toEqual([300, 300]);
  // wider than a point in every dimension
  for (const { from, to } of limits) expect(to).toBeGreaterThan(from);
  const { together, alone } = rangePaper(ranges, speaker('mm'));
  expect(JSON.stringify(together)).toContain('Within these limits 300 designs');
  expect(JSON.stringify(alone)).toContain(
    `${new Set(asked.map((at) => JSON.stringify(at))).size} designs were worked out`,
  );
});

/** Runs with verdicts that are kept, and says what they come to and what was kept. */
async function kept(
  before: string,
  act: (judge: Judge) => Promise<unknown>,
): Promise<[result: string, lines: string]> {
  const answers = new KeptAnswers();
  answers.add(before);
  let lines = before;
  const judge = answers.judging('a stool', judged(shore), (line) => {
    lines += line;
  });
  return [JSON.stringify(await act(judge)), lines];
}

test('shares joined come to the same as a whole run, to the byte', async () => {
  const [expected] = await kept('', (judge) => rangesOf(whole, judge, SAME, quiet));
  for (const of of [1, 2, 5, 8]) {
    let all = '';
    for (let part = 1; part <= of; part += 1) {
      const [, lines] = await kept('', (judge) => workShare(whole, { part, of }, judge, SAME, quiet));
      all += lines;
    }
    const known = all.split('\n').length;
    const [joined, lines] = await kept(all, (judge) =>
      rangesOf({ ...whole, together: undefined }, judge, SAME, quiet),
    );
    // a few places at the borders of shares are seen only together
    expect(lines.split('\n').length - known).toBeLessThan(known / 20);
    expect(JSON.parse(joined)).toMatchObject({
      alone: JSON.parse(expected).alone,
      map: JSON.parse(expected).map,
    });
    const [boxed] = await kept(lines, (judge) => rangesOf(whole, judge, SAME, quiet));
    expect(boxed).toBe(expected);
  }
});

test('a run stopped at any byte of its file goes on to the same end, and asks only for what is missing', async () => {
  const [expected, lines] = await kept('', (judge) => rangesOf(whole, judge, SAME, quiet));
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 0, max: lines.length - 1 }), async (cut) => {
      const [result, after] = await kept(`${lines.slice(0, cut)}\n`, (judge) =>
        rangesOf(whole, judge, SAME, quiet),
      );
      expect(result).toBe(expected);
      const missing = lines.slice(cut).split('\n').length - 1;
      expect(after.split('\n').length - lines.slice(0, cut).split('\n').length).toBe(missing + 1);
    }),
    seed(50),
  );
});
