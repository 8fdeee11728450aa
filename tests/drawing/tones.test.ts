import { afterAll, expect, test } from 'vitest';
import stool from '../../models/stool.js';
import { exploded } from '../../src/assembly/index.js';
import {
  explodedView,
  lookingFrom,
  seenParts,
  type Tone,
  VIEW_FRAMES,
  type View,
  viewOf,
} from '../../src/drawing/index.js';
import { add, type Frame, pointOut, scale, subtract, type Vec2, type Vec3 } from '../../src/frame/index.js';
import type { Model } from '../../src/model/index.js';
import { loopArea, regionArea, subtractRegion } from '../../src/profile/index.js';
import { allSolids, type Body, boxIn, hit, type Solids, startKernel } from '../../src/solid/index.js';
import { DRAWN, solidsFor } from './drawn-designs.js';

const kernel = await startKernel();
afterAll(() => kernel.dispose());

/** Nearer than this to a drawn line a point belongs to no face for certain, mm. */
const AT_A_LINE = 0.8;

/** The part whose tone covers a point, by the winding of its loops; of what lies above each other, the last that is drawn. */
const tonedAt = ({ tones }: View, p: Vec2): string | undefined =>
  tones.findLast(
    ({ part, loops }) => part !== 'shadow' && loops.reduce((n, loop) => n + winding(loop, p), 0) !== 0,
  )?.part;

function winding(loop: readonly Vec2[], [x, y]: Vec2): number {
  let turns = 0;
  loop.forEach(([ax, ay], i) => {
    const [bx, by] = loop[(i + 1) % loop.length]!;
    if (ay <= y === by <= y) return;
    if (ax + ((bx - ax) * (y - ay)) / (by - ay) > x) turns += by > ay ? 1 : -1;
  });
  return turns;
}

interface Target {
  readonly id: string;
  readonly body: Body;
  readonly shift: Vec3;
  /** Of the body where it is drawn, seen in the view. */
  readonly box: ReturnType<typeof boxIn>;
}

const targetsOf = (solids: Solids, shifts: ReadonlyMap<string, Vec3>, view: Frame): readonly Target[] =>
  allSolids(solids).map(({ id, body }) => {
    const shift = shifts.get(id) ?? ([0, 0, 0] as const);
    return { id, body, shift, box: boxIn(body, { ...view, origin: subtract(view.origin, shift) }) };
  });

/** The part that a ray from far in front meets first; what it passes beside the box of is not asked. */
function struckAt(targets: readonly Target[], view: Frame, [x, y]: Vec2): string | undefined {
  let [first, nearest] = [undefined as string | undefined, Number.POSITIVE_INFINITY];
  for (const { id, body, shift, box } of targets) {
    if (x < box.min[0] || x > box.max[0] || y < box.min[1] || y > box.max[1]) continue;
    const from = subtract(pointOut(view, [x, y, 4000]), shift);
    const at = hit(body, from, add(from, scale(view.z, -8000)));
    if (at !== undefined && at < nearest) [first, nearest] = [id, at];
  }
  return first;
}

function nearLine({ lines }: View, [x, y]: Vec2): boolean {
  return lines.some(({ points }) =>
    points.slice(1).some(([bx, by], i) => {
      const [ax, ay] = points[i]!;
      const [dx, dy] = [bx - ax, by - ay];
      const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
      return Math.hypot(x - ax - dx * t, y - ay - dy * t) < AT_A_LINE;
    }),
  );
}

/** Points of a picture, evenly strewn, whose tone is not that of what a ray meets first. */
function wrong(solids: Solids, shifts: ReadonlyMap<string, Vec3>, view: View, rows = 20) {
  const points = view.lines.flatMap((line) => line.points);
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [left, low] = [Math.min(...xs), Math.min(...ys)];
  const [wide, high] = [Math.max(...xs) - left, Math.max(...ys) - low];
  const targets = targetsOf(solids, shifts, view.frame);
  const found: string[] = [];
  let looked = 0;
  for (let i = 0; i < rows; i += 1) {
    for (let j = 0; j < rows; j += 1) {
      const p: Vec2 = [left + (wide * (i + 0.37)) / rows, low + (high * (j + 0.61)) / rows];
      if (nearLine(view, p)) continue;
      looked += 1;
      const [toned, struck] = [tonedAt(view, p), struckAt(targets, view.frame, p)];
      if (toned !== struck) found.push(`${p.map((one) => one.toFixed(1))}: ${toned}, not ${struck}`);
    }
  }
  return { found, looked };
}

test.each(DRAWN.map((drawn) => [drawn.called, drawn] as const))(
  'every spot of the %s has the tone of the part a ray meets first there',
  (_called, drawn) => {
    const solids = solidsFor(kernel, drawn);
    const parts = seenParts(solids);
    const view = viewOf(parts, lookingFrom([-3, -7, -4]), { hidden: false, toned: 'standing' });
    const { found, looked } = wrong(solids, new Map(), view, 14);
    expect(found).toEqual([]);
    expect(looked).toBeGreaterThan(70);
  },
);

test('drawn apart every spot has the tone of the part a ray meets first there, half-drawn tenons too', () => {
  const solids = solidsFor(kernel, DRAWN[1]!);
  // so little apart that tenons stand half in their mortises, where no order of painting would do
  const shifts = exploded(solids.design, -25);
  const parts = seenParts(solids, shifts);
  const view = viewOf(parts, lookingFrom([1, -1.3, -0.4]), { hidden: false, toned: 'apart' });
  expect(wrong(solids, shifts, view).found).toEqual([]);
});

test('the rays catch a picture whose parts are toned in no order', () => {
  const solids = solidsFor(kernel, DRAWN[0]!);
  const apart = seenParts(solids).map((part) =>
    viewOf([part], VIEW_FRAMES.isometric, { hidden: false, toned: 'apart' }),
  );
  const view = viewOf(seenParts(solids), VIEW_FRAMES.isometric, { hidden: false });
  const { found } = wrong(solids, new Map(), { ...view, tones: apart.flatMap(({ tones }) => tones) }, 22);
  expect(found.length).toBeGreaterThan(5);
});

const covers = ({ loops }: Tone): number => loops.reduce((sum, loop) => sum + loopArea(loop), 0);

test('drawn apart every tenon of every stool can be read', () => {
  for (const values of [{}, { treads: '2' }, { rake: '0', taper: '0' }]) {
    const solids = solidsFor(kernel, { called: 'stool', model: stool as unknown as Model, values });
    const { tones } = explodedView(solids);
    for (const id of solids.tenons.keys()) {
      // what is painted later is painted over it
      const shown = tones.reduce(
        (sum, { part, loops }, i) =>
          part === id
            ? sum +
              regionArea(
                subtractRegion(
                  loops,
                  tones.slice(i + 1).flatMap((over) => over.loops),
                ),
              )
            : sum,
        0,
      );
      expect(shown, id).toBeGreaterThan(100);
    }
  }
});

test('the top of a stool is its lightest face, and end grain is darker than the long grain beside it', () => {
  const { tones } = viewOf(seenParts(solidsFor(kernel, DRAWN[0]!)), VIEW_FRAMES.isometric, {
    hidden: false,
    toned: 'apart',
  });
  const light = (tone: Tone) =>
    [1, 3, 5].reduce((sum, at) => sum + Number.parseInt(tone.colour.slice(at, at + 2), 16), 0);
  const tread = tones
    .filter(({ part, marks }) => part === 'tread' && marks.length > 2)
    .toSorted((a, b) => covers(b) - covers(a));
  const [top, front, end] = tread as [Tone, Tone, Tone];
  expect(light(top)).toBeGreaterThan(light(front) + 60);
  expect(light(front)).toBeGreaterThan(light(end));
  // dark enough for a printer without colours: a third down from white at the front, and more on the end
  expect(light(front)).toBeLessThan(765 * 0.66);
});
