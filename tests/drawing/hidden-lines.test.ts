import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import stool from '../../models/stool.js';
import {
  lookingFrom,
  seenParts,
  VIEW_FRAMES,
  type View,
  type ViewLine,
  viewOf,
} from '../../src/drawing/index.js';
import { add, type Frame, pointIn, scale, type Vec2, type Vec3 } from '../../src/frame/index.js';
import type { Model } from '../../src/model/index.js';
import { allSolids, type Body, boxIn, hit, startKernel } from '../../src/solid/index.js';
import { many } from '../properties/seed.js';
import { DRAWN, type Drawn, solidsFor } from './drawn-designs.js';

const kernel = await startKernel();
afterAll(() => kernel.dispose());

/** Rays start this far in front of a point and this far beside it, mm: two ways that must agree. */
const RAYS = [
  { before: 0.05, beside: 0.01 },
  { before: 0.025, beside: 0.005 },
] as const;

const FAR = 5000;

/** A generator of fractions that is the same in every run. */
function fractions(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

interface Caught {
  points: number;
  grazing: number;
  missing: string[];
  shown: string[];
}

/** Holds a view against rays: each point of an edge that rays see must be on a visible line, and the other way round. */
function holdAgainstRays(
  drawn: Drawn,
  frame: Frame,
  points: number,
  seed: number,
  spoilt: (view: View) => View = (view) => view,
): Caught {
  const solids = solidsFor(kernel, drawn);
  const parts = seenParts(solids);
  const view = spoilt(viewOf(parts, frame, { hidden: true }));
  const bodies = allSolids(solids).map(({ body }) => ({ body, box: boxIn(body, frame) }));
  const next = fractions(seed);
  const edges = parts.flatMap(({ solid }) => {
    const turned = (t: number) =>
      solid.normals[3 * t]! * frame.z[0] +
        solid.normals[3 * t + 1]! * frame.z[1] +
        solid.normals[3 * t + 2]! * frame.z[2] >
      1e-4;
    return Array.from(solid.sharp, (sharp, e): readonly [Vec3, Vec3] | undefined => {
      const [a, b, t, u] = solid.edges.subarray(4 * e, 4 * e + 4) as unknown as [
        number,
        number,
        number,
        number,
      ];
      if (sharp === 0 && turned(t) === turned(u)) return undefined;
      const at = (i: number): Vec3 => [
        solid.positions[3 * i]!,
        solid.positions[3 * i + 1]!,
        solid.positions[3 * i + 2]!,
      ];
      return [at(a), at(b)];
    }).filter((edge) => edge !== undefined);
  });
  const lengths = edges.map(([a, b]) =>
    Math.hypot(
      ...pointIn(frame, b)
        .slice(0, 2)
        .map((v, i) => v - pointIn(frame, a)[i]!),
    ),
  );
  const total = lengths.reduce((sum, one) => sum + one, 0);
  const caught: Caught = { points: 0, grazing: 0, missing: [], shown: [] };
  const near = linesNear(view);
  for (let n = 0; n < points; n += 1) {
    let left = next() * total;
    let e = 0;
    while (e + 1 < edges.length && left > lengths[e]!) left -= lengths[e++]!;
    const [a, b] = edges[e]!;
    const share = 0.02 + 0.96 * next();
    const p: Vec3 = [0, 1, 2].map((i) => a[i]! + (b[i]! - a[i]!) * share) as unknown as Vec3;
    const seen = seenByRays(bodies, frame, p, next);
    caught.points += 1;
    if (seen === undefined) {
      caught.grazing += 1;
      continue;
    }
    const [x, y] = pointIn(frame, p);
    if (seen && !near('visible', [x, y], 0.02)) caught.missing.push(`${p}`);
    if (!seen && !near('visible', [x, y], 0.02) && !near('hidden', [x, y], 0.02))
      caught.missing.push(`hidden ${p}`);
  }
  // what is drawn as visible must be seen by rays at one of the edges that lie there
  const drawnLines = view.lines
    .filter(({ line }) => line === 'visible')
    .flatMap(({ points: of }) => of.slice(1).map((to, i) => [of[i]!, to] as const));
  const flat = edges.map(([a, b]) => [pointIn(frame, a), pointIn(frame, b)] as const);
  for (let n = 0; n < points / 2; n += 1) {
    const [from, to] = drawnLines[Math.floor(next() * drawnLines.length)]!;
    if (Math.hypot(to[0] - from[0], to[1] - from[1]) < 0.1) continue;
    const share = 0.1 + 0.8 * next();
    const q: Vec2 = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
    const verdicts = flat.flatMap(([a, b], i) => {
      const along = onSegment(q, a, b);
      if (along === undefined) return [];
      const [p, r] = edges[i]!;
      const spot: Vec3 = [0, 1, 2].map((k) => p[k]! + (r[k]! - p[k]!) * along) as unknown as Vec3;
      return [seenByRays(bodies, frame, spot, next)];
    });
    caught.points += 1;
    if (verdicts.includes(true)) continue;
    if (verdicts.includes(undefined)) caught.grazing += 1;
    else caught.shown.push(`${q}`);
  }
  return caught;
}

/** True when every ray toward the viewer is free, false when every one meets something, undefined when they differ. */
function seenByRays(
  bodies: readonly { readonly body: Body; readonly box: ReturnType<typeof boxIn> }[],
  frame: Frame,
  p: Vec3,
  next: () => number,
): boolean | undefined {
  const ways = RAYS.flatMap(({ before, beside }) => {
    const first = next() * 2 * Math.PI;
    // all round, so that a point on a rounded flank always has rays on both sides
    return [0, 1, 2, 3].map((quarter) => ({ before, beside, turn: first + (quarter * Math.PI) / 2 }));
  });
  const isBlocked = ({ before, beside, turn }: (typeof ways)[number]): boolean => {
    const start = add(
      add(p, scale(frame.z, before)),
      add(scale(frame.x, beside * Math.cos(turn)), scale(frame.y, beside * Math.sin(turn))),
    );
    const [x, y, z] = pointIn(frame, start);
    return bodies.some(
      ({ body, box }) =>
        box.max[2] > z &&
        x > box.min[0] &&
        x < box.max[0] &&
        y > box.min[1] &&
        y < box.max[1] &&
        hit(body, start, add(start, scale(frame.z, FAR))) !== undefined,
    );
  };
  const isFirst = isBlocked(ways[0]!);
  // the first that differs from the first of all settles it
  return ways.slice(1).some((way) => isBlocked(way) !== isFirst) ? undefined : !isFirst;
}

function linesNear(view: View): (line: 'visible' | 'hidden', p: Vec2, reach: number) => boolean {
  const all = view.lines.flatMap(({ line, points }) =>
    points.slice(1).map((to, i) => ({ line, a: points[i]!, b: to })),
  );
  return (line, p, reach) => all.some((one) => one.line === line && distance(p, one.a, one.b) < reach);
}

function distance([x, y]: Vec2, a: Vec2, b: Vec2): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const t = Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - a[0] - dx * t, y - a[1] - dy * t);
}

/** How far along a projected edge a point lies, 0..1; undefined off it by more than 0.02 mm. */
function onSegment([x, y]: Vec2, a: Vec3, b: Vec3): number | undefined {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const run = dx * dx + dy * dy;
  if (run < 1e-8) return undefined;
  const t = ((x - a[0]) * dx + (y - a[1]) * dy) / run;
  if (t < -0.001 || t > 1.001) return undefined;
  return Math.hypot(x - a[0] - dx * t, y - a[1] - dy * t) < 0.02 ? Math.min(1, Math.max(0, t)) : undefined;
}

const VIEWS = ['right', 'top', 'bottom', 'front', 'isometric'] as const;

/** Stools like others that are drawn: from two sides for somebody who has just cloned. */
const viewsOf = ({ called }: Drawn): readonly (typeof VIEWS)[number][] =>
  called === 'stool of one tread' || called === 'upright stool' ? VIEWS.slice(-many(2, 5)) : VIEWS;

test.each(DRAWN.flatMap((drawn) => viewsOf(drawn).map((view) => [drawn.called, view, drawn] as const)))(
  'every edge of the %s that rays see from the %s is drawn as seen, and no other',
  (_called, view, drawn) => {
    const caught = holdAgainstRays(drawn, VIEW_FRAMES[view], 160, 7);
    expect(caught.missing).toEqual([]);
    expect(caught.shown).toEqual([]);
    expect(caught.points - caught.grazing).toBeGreaterThan(60);
  },
);

test('for all stools and directions, what is drawn as seen is what rays see', () => {
  const sizes = fc.record({
    treads: fc.constantFrom('1', '2'),
    rake: fc.integer({ min: 0, max: 20 }),
    taper: fc.integer({ min: 0, max: 6 }),
    treadThickness: fc.integer({ min: 22, max: 40 }),
    sideThickness: fc.integer({ min: 22, max: 36 }),
    handOpening: fc.constantFrom('yes', 'no'),
  });
  const direction = fc
    .tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }))
    .filter((v) => Math.hypot(...v) > 2);
  fc.assert(
    fc.property(sizes, direction, (values, towards) => {
      const words = Object.fromEntries(Object.entries(values).map(([name, value]) => [name, String(value)]));
      const drawn: Drawn = { called: 'stool', model: stool as unknown as Model, values: words };
      const caught = holdAgainstRays(drawn, lookingFrom(towards), 120, 11);
      expect(caught.missing).toEqual([]);
      expect(caught.shown).toEqual([]);
    }),
    { seed: 41, numRuns: many(4, 12) },
  );
});

const runOf = ({ points }: ViewLine): number =>
  points.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - points[i]![0], y - points[i]![1]), 0);

test('the rays catch a view that lacks its longest line', () => {
  const caught = holdAgainstRays(DRAWN[0]!, VIEW_FRAMES.isometric, 400, 7, (view) => {
    const seen = view.lines.filter(({ line }) => line === 'visible');
    const longest = seen.toSorted((one, other) => runOf(other) - runOf(one))[0];
    return { ...view, lines: view.lines.filter((line) => line !== longest) };
  });
  expect(caught.missing.length).toBeGreaterThan(0);
});

test('the rays catch a view that draws hidden lines as seen, and one whose lines lie 0.1 mm off', () => {
  const asSeen = holdAgainstRays(DRAWN[0]!, VIEW_FRAMES.front, 160, 7, (view) => ({
    ...view,
    lines: view.lines.map((line) => ({ ...line, line: 'visible' })),
  }));
  expect(asSeen.shown.length).toBeGreaterThan(5);
  const moved = holdAgainstRays(DRAWN[0]!, VIEW_FRAMES.front, 160, 7, (view) => ({
    ...view,
    lines: view.lines.map((line) => ({
      ...line,
      points: line.points.map(([x, y]): Vec2 => [x + 0.1, y + 0.1]),
    })),
  }));
  expect(moved.missing.length).toBeGreaterThan(5);
});
