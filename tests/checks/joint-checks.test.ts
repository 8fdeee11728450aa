import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/checks/index.js';
import { add, type Vec3 } from '../../src/frame/index.js';
import {
  codes,
  findings,
  nudged,
  sample,
  withBoard,
  withMortises,
  withPlace,
  withTenons,
} from './sample-design.js';

const sound = sample();
const one = async (design: Parameters<typeof findings>[0], code: string): Promise<Finding> => {
  const found = (await findings(design)).filter((finding) => finding.code === code);
  expect(found.length, code).toBeGreaterThan(0);
  return found[0]!;
};

test('a sound design has nothing to report', async () => {
  expect(await findings(sound)).toEqual([]);
});

describe('the bottoms of a joint', () => {
  const longer = (by: number, options = {}) =>
    withTenons(sample(options), (t) => ({ ...t, intoB: t.intoB + by, length: t.length + by }));

  test('a tenon 0.1 mm too long for its end gap is reported with the figures and the remedy, and nothing else is', async () => {
    expect(await codes(longer(0.1))).toEqual(['tenon-end-gap']);
    const finding = await one(longer(0.1), 'tenon-end-gap');
    expect(finding).toMatchObject({
      level: 'error',
      subjects: ['shelf/upright/1', 'upright'],
      measured: expect.closeTo(0.9, 6),
      limit: 1,
    });
    // 20 in the face, 4 · 13.8 in the end
    expect(finding.message).toBe(
      'tenon shelf/upright/1 is 73.3 mm long and its two mortises together are 75.2 mm deep: it stops 0.9 mm from the bottom in upright, where 1 mm must stay free',
    );
    expect(finding.remedy).toBe('shorten the tenon by 0.1 mm, or cut a mortise as much deeper');
  });

  test('a tenon 0.1 mm longer than its mortises bottoms out and overlaps the board', async () => {
    const design = longer(0.1, { endGap: 0 });
    expect(await codes(design)).toEqual(['pieces-overlap', 'tenon-bottoms-out']);
    expect((await one(design, 'tenon-bottoms-out')).measured).toBeCloseTo(-0.1, 6);
    expect((await one(design, 'pieces-overlap')).message).toContain('about 0.1 mm thick');
  });

  test('a tenon that fills its mortises to the bottom, as asked, is sound', async () => {
    expect(await codes(sample({ endGap: 0 }))).toEqual([]);
  });

  test('facets are no fault: 0.01 mm short of the asked gap is let pass, 0.02 mm is not', async () => {
    expect(await codes(longer(0.01))).toEqual([]);
    expect(await codes(longer(0.02))).toEqual(['tenon-end-gap']);
  });
});

describe('the cheeks and edges of a joint', () => {
  const thicker = (by: number) => withTenons(sound, (t) => ({ ...t, thickness: t.thickness + by }));
  test('a tenon 0.05 mm too thick is too tight, 0.01 mm is within the facets', async () => {
    expect(await codes(thicker(0.01))).toEqual([]);
    expect(await codes(thicker(0.05))).toEqual(['tenon-too-tight']);
    const finding = await one(thicker(0.05), 'tenon-too-tight');
    expect(finding.measured).toBeCloseTo(0.075, 3);
    expect(finding.remedy).toContain('plane 0.025 mm off each cheek of the tenon');
  });

  test('a tenon thicker than its mortise is wide is too tight and overlaps both boards', async () => {
    expect(await codes(thicker(0.3))).toEqual(['pieces-overlap', 'tenon-too-tight']);
  });

  test('0.25 mm of air on a cheek is the most glue bridges well', async () => {
    for (const cheekClearance of [0.24, 0.25]) expect(await codes(sample({ cheekClearance }))).toEqual([]);
    expect(await codes(sample({ cheekClearance: 0.26 }))).toEqual(['tenon-loose']);
  });

  test('half a millimetre between mortise length and tenon width lets glue and air pass', async () => {
    for (const edgeClearance of [0.5, 0.51]) expect(await codes(sample({ edgeClearance }))).toEqual([]);
    expect(await codes(sample({ edgeClearance: 0.49 }))).toEqual(['tenon-edge-gap']);
    expect((await one(sample({ edgeClearance: 0.49 }), 'tenon-edge-gap')).level).toBe('warning');
  });

  test('a tenon as wide as its mortises are long is told by its edges, not by its cheeks', async () => {
    const design = sample({ edgeClearance: 0 });
    expect(await codes(design)).toEqual(['tenon-edge-gap']);
    expect(await one(design, 'tenon-edge-gap')).toMatchObject({
      level: 'error',
      measured: expect.closeTo(0, 6),
    });
  });

  test('a tenon wider than its mortises are long overlaps both boards', async () => {
    const design = withTenons(sound, (t) => ({ ...t, width: t.width + 1.4 }));
    expect(await codes(design)).toEqual(['pieces-overlap', 'tenon-edge-gap']);
  });
});

describe('mortises in line', () => {
  const moved = (by: Vec3, turnDeg = 0) =>
    withMortises(sound, 'upright', (m) => ({ ...m, at: nudged(m.at, by, turnDeg) }));

  test('0.005 mm apart are in line, 0.015 mm apart are not', async () => {
    expect(await codes(moved([0, 0.005, 0]))).toEqual([]);
    expect(await codes(moved([0, 0.015, 0]))).toContain('mortises-out-of-line');
    const finding = await one(moved([0.3, 0, 0]), 'mortises-out-of-line');
    expect(finding).toMatchObject({ unit: 'mm', measured: expect.closeTo(0.3, 3), limit: 0.01 });
  });

  test('turned by 0.005° run one way, turned by 0.02° do not', async () => {
    expect(await codes(moved([0, 0, 0], 0.005))).toEqual([]);
    expect(await codes(moved([0, 0, 0], 0.02))).toContain('mortises-out-of-line');
    expect(await one(moved([0, 0, 0], 0.02), 'mortises-out-of-line')).toMatchObject({ unit: 'deg' });
  });
});

describe('walls round a mortise', () => {
  // the shelf is 40 thick: a depth of 40 − w leaves a wall of w; deeper than half is another warning
  const leaving = (wall: number) => sample({ depths: { shelf: 40 - wall } });
  test.each([
    [6.1, undefined],
    [5.9, 'warning'],
    [3.1, 'warning'],
    [2.9, 'error'],
    [0.1, 'error'],
  ])('%f mm of wood behind the bottom: %s', async (wall, level) => {
    const found = (await findings(leaving(wall))).filter(({ code }) => code === 'wall-thin');
    expect(found.map((finding) => finding.level)).toEqual(level ? [level] : []);
    for (const finding of found) expect(finding.measured).toBeCloseTo(wall, 2);
    expect((await codes(leaving(wall))).filter((code) => code !== 'wall-thin')).toEqual(['mortise-deep']);
  });

  test('a mortise 0.1 mm through a face is caught, with what follows from it and nothing else', async () => {
    // the tenon must not stand out: only the mortise is too deep
    const design = withMortises(sound, 'shelf', (m) => ({ ...m, depth: 40.1 }));
    const found = await codes(design);
    expect(found).toContain('mortise-breaks-through');
    expect(
      found.filter((code) => !['mortise-breaks-through', 'mortise-deep', 'volume-differs'].includes(code)),
    ).toEqual([]);
    expect((await one(design, 'mortise-breaks-through')).subjects).toEqual(['shelf/upright/1', 'shelf']);
  });

  test('a mortise 0.1 mm through an edge is caught', async () => {
    // its side is 20 − 7 = 13 from the faces of the upright
    const design = withMortises(sound, 'upright', (m) => ({ ...m, at: nudged(m.at, [0, 13.1, 0]) }));
    const found = await codes(design);
    expect(found).toContain('mortise-breaks-through');
    expect(found).toContain('volume-differs');
    // the tenon no longer fits the mortise that was moved
    expect(
      found.filter(
        (code) =>
          !['mortise-breaks-through', 'volume-differs', 'tenon-too-tight', 'pieces-overlap'].includes(code),
      ),
    ).toEqual([]);
  });

  test('two mortises that meet in one board are caught in both', async () => {
    const twice = sample({ tenons: 2, tenonWidth: 40, endInset: 15 });
    expect(await codes(twice)).toEqual(['web-thin']);
    // 120 − 2 · 15 − 2 · 41
    expect(await one(twice, 'web-thin')).toMatchObject({ measured: expect.closeTo(8, 2), limit: 12.7 });
    expect((await one(twice, 'web-thin')).message).toContain(
      'between its end and the next mortise; 12.7 mm is usual',
    );
    // 41 long each, 49 apart: 8 of web; move one by 8.1
    const design = withBoard(twice, 'shelf', (board) => ({
      ...board,
      mortises: board.mortises.map((m, i) => (i === 0 ? { ...m, at: nudged(m.at, [8.1, 0, 0]) } : m)),
    }));
    const found = await findings(design);
    const broken = found.filter(({ code }) => code === 'mortise-breaks-through');
    expect(broken.map(({ subjects }) => subjects)).toEqual([
      ['shelf/upright/1', 'shelf'],
      ['shelf/upright/2', 'shelf'],
    ]);
    const others = new Set(found.map(({ code }) => code));
    for (const code of [
      'mortise-breaks-through',
      'volume-differs',
      'tenon-too-tight',
      'tenon-edge-gap',
      'pieces-overlap',
      'web-thin',
    ] as const)
      others.delete(code);
    expect([...others]).toEqual([]);
  });
});

describe('proportions by common practice', () => {
  test('half the thickness is the deepest mortise in a wide face', async () => {
    expect(await codes(sample({ depths: { shelf: 20 } }))).toEqual([]);
    expect(await codes(sample({ depths: { shelf: 20.1 } }))).toEqual(['mortise-deep']);
    // an end may be entered deeper
    expect(await codes(sample({ depths: { upright: 100 } }))).toEqual([]);
  });

  test('half an inch is the least wood past the end of a mortise', async () => {
    // (120 − length) / 2, the length being the tenon's width and 1
    expect(await codes(sample({ tenonWidth: 120 - 2 * 12.7 - 1 }))).toEqual([]);
    const design = sample({ tenonWidth: 120 - 2 * 12.6 - 1 });
    expect(await codes(design)).toEqual(['end-inset']);
    expect((await one(design, 'end-inset')).measured).toBeCloseTo(12.6, 1);
  });

  test('who asks for another inset or web is held to what was asked', async () => {
    // a tenon as wide as the inset lets it: 120 − 2 · 6 less the millimetre for glue
    expect(await codes(sample({ endInset: 6 }))).toEqual([]);
    expect(await codes(sample({ endInset: 20 }))).toEqual([]);
    const design = sample({ endInset: 20, tenonWidth: 120 - 2 * 19 - 1 });
    expect(await codes(design)).toEqual(['end-inset']);
    const finding = await one(design, 'end-inset');
    expect(finding).toMatchObject({ measured: expect.closeTo(19, 1), limit: 20 });
    expect(finding.message).toContain('you asked for 20.0 mm');
    expect(await codes(sample({ tenons: 2, web: 8 }))).toEqual([]);
  });

  test('a tenon is from a quarter to half of the thinner board', async () => {
    for (const [thickness, code] of [
      [9.9, 'tenon-thin'],
      [10, undefined],
      [10.1, undefined],
      [19.9, undefined],
      [20, undefined],
      [20.1, 'tenon-thick'],
    ] as const) {
      const design = sample({ cutter: thickness + 0.2, depths: { upright: 40 } });
      expect(await codes(design), `${thickness}`).toEqual(code ? [code] : []);
    }
  });
});

describe('the shoulders of a joint', () => {
  const moved = (by: Vec3, turnDeg = 0) =>
    withPlace(sound, 'upright', (place) => ({
      ...nudged(place, [0, 0, 0], turnDeg),
      origin: add(place.origin, by),
    }));

  test('boards moved 0.05 mm apart after joining stand open, and nothing else is wrong', async () => {
    const design = moved([0, 0, 0.05]);
    expect(await codes(design)).toEqual(['shoulder-open']);
    const finding = await one(design, 'shoulder-open');
    expect(finding).toMatchObject({
      level: 'error',
      subjects: ['shelf/upright/1', 'shelf', 'upright'],
      measured: expect.closeTo(0.05, 6),
      limit: 0.01,
    });
    expect(finding.message).toContain('are 0.05 mm apart');
  });

  test('boards 12 mm apart, and boards that do not face each other at all, are caught too', async () => {
    expect((await one(moved([0, 0, 12]), 'shoulder-open')).measured).toBeCloseTo(12, 6);
    expect((await one(moved([200, 0, 0]), 'shoulder-open')).message).toContain(
      'no shoulders facing each other',
    );
  });

  test('an upright turned by a tenth of a degree stands open on one side', async () => {
    const found = (await findings(moved([0, 0, 0], -0.1))).filter(({ code }) => code === 'shoulder-open');
    expect(found.length).toBe(1);
  });

  test('arithmetic is no gap: 0.005 mm is let pass', async () => {
    expect(await codes(moved([0, 0, 0.005]))).toEqual([]);
  });
});

describe('pieces in one place', () => {
  test('boards moved 0.05 mm into each other after joining overlap, and the joint has less air', async () => {
    const design = withPlace(sound, 'upright', (place) => ({
      ...place,
      origin: [place.origin[0], place.origin[1], place.origin[2] - 0.05],
    }));
    expect(await codes(design)).toEqual(['pieces-overlap', 'tenon-end-gap']);
    const finding = await one(design, 'pieces-overlap');
    expect(finding.subjects).toEqual(['shelf', 'upright']);
    // 120 × 40 less the mortise, 0.05 deep
    expect(finding.measured).toBeCloseTo((120 * 40 - (Math.PI * 49 + 14 * 80)) * 0.05, -1);
    expect(finding.message).toContain('about 0.05 mm thick');
  });

  test('boards that only touch do not overlap', async () => {
    expect(await codes({ ...sound, joints: [] })).toEqual(['board-joined-to-nothing']);
  });
});

test('findings come errors first, and each says a remedy and its basis', async () => {
  const found = await findings(sample({ depths: { shelf: 38 }, tenonWidth: 105 }));
  const order = ['error', 'warning', 'note'];
  const levels = found.map(({ level }) => order.indexOf(level));
  expect(levels).toEqual(levels.toSorted());
  expect(found.length).toBeGreaterThan(2);
  for (const { remedy, basis } of found) expect(remedy.length * basis.length).toBeGreaterThan(0);
});
