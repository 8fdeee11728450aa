// The pictures are held against the figures of their cards: the cut faces of rails, wedges and guide lie in the plane the view is cut
// at, so their corners follow from the card, and from where the picture is seen, by a few products.

import { expect, test } from 'vitest';
import { setUpPicture } from '../../src/drawing/set-up/set-up-picture.js';
import type { SheetEntity } from '../../src/drawing/sheet/index.js';
import type { SetupCard } from '../../src/shop/index.js';
import { startKernel } from '../../src/solid/index.js';
import { carded, made } from '../shop/made.js';

const kernel = await startKernel();

type Point = readonly [number, number];

/** Of what is drawn, mm: thickness and height of a rail, of a guide board. */
const [RAIL, TALL, GUIDE] = [18, 46, 14];

/** Across and up in the picture for 1 mm away from the person and 1 mm up, seen from [1, −0.62, 0.5]. */
const far = (): Point => {
  const [x, y, z] = [1, -0.62, 0.5];
  const flat = Math.hypot(x, y);
  return [x / flat, (-y * z) / flat / Math.hypot(flat, z)];
};
const UP = Math.hypot(1, -0.62) / Math.hypot(1, -0.62, 0.5);

const seen = ([y, z]: Point): Point => [far()[0] * y, far()[1] * y + UP * z];

/** Corners of cut faces by the card alone: away from the cutter's centre line, and up from the mouth. */
function cutFaces({ nearRail, farRail, guideOffset }: SetupCard): ReadonlyMap<string, readonly Point[]> {
  const faces = new Map<string, readonly Point[]>();
  const box = (from: number, to: number, low: number, high: number): readonly Point[] => [
    [from, low],
    [to, low],
    [to, high],
    [from, high],
  ];
  if (nearRail) faces.set('near rail', box(-nearRail.distance - RAIL, -nearRail.distance, -TALL, 0));
  if (farRail) faces.set('far rail', box(farRail.distance, farRail.distance + RAIL, -TALL, 0));
  if (guideOffset !== undefined) faces.set('guide board', box(guideOffset, guideOffset + 2 * RAIL, 0, GUIDE));
  return faces;
}

const drawnBy = (card: SetupCard, work: ReturnType<typeof carded>) =>
  setUpPicture({ kernel, design: work.design }, work, card, { width: 84, height: 56 })!.draw([0, 0]);

const tonesOf = (drawn: readonly SheetEntity[], part: string) =>
  drawn.flatMap((one) => (one.kind === 'tone' && one.part === part ? one.loops : []));

/** The loop whose sides run as those of a face do, and how much smaller it is drawn. */
function laid(drawn: readonly SheetEntity[], part: string, face: readonly Point[]) {
  const meant = face.map(seen);
  const span = (loop: readonly Point[]) => ({
    left: Math.min(...loop.map(([x]) => x)),
    low: Math.min(...loop.map(([, y]) => y)),
    wide: Math.max(...loop.map(([x]) => x)) - Math.min(...loop.map(([x]) => x)),
    high: Math.max(...loop.map(([, y]) => y)) - Math.min(...loop.map(([, y]) => y)),
  });
  const want = span(meant);
  return tonesOf(drawn, part).flatMap((loop) => {
    const have = span(loop);
    const factor = have.wide / want.wide;
    if (Math.abs(have.high - factor * want.high) > 0.02) return [];
    return [{ factor, left: have.left - factor * want.left, low: have.low - factor * want.low }];
  });
}

/** Wedges whose slope does not run as the card says: a long side of one that leans by its angle, thick end up or down. */
function wedgesAstray({ nearRail, farRail }: SetupCard, drawn: readonly SheetEntity[], factor: number) {
  const loops = drawn.flatMap((one) =>
    one.kind === 'tone' && one.part.startsWith('wedge') ? one.loops : [],
  );
  const sides = loops.flatMap((loop) => loop.map((a, i) => [a, loop[(i + 1) % loop.length]!] as const));
  return [[nearRail, 1] as const, [farRail, -1] as const].flatMap(([rail, away]) => {
    if (!rail?.wedge) return [];
    const { angleDeg, thickEnd } = rail.wedge;
    const lean = Math.tan((angleDeg * Math.PI) / 180) * away * (thickEnd === 'up' ? 1 : -1);
    const [x, y] = seen([lean, 1]);
    const found = sides.some(([a, b]) => {
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      return Math.hypot(dx, dy) > 15 * factor && Math.abs(dx * y - dy * x) < 0.02 * Math.hypot(dx, dy);
    });
    return found ? [] : ['a wedge leans as nothing'];
  });
}

/** What of a picture does not stand where its card says. */
function astray(card: SetupCard, drawn: readonly SheetEntity[]): readonly string[] {
  const faces = [...cutFaces(card)];
  const places = faces.map(([part, face]) => laid(drawn, part, face));
  const wrong = faces.flatMap(([part], i) => (places[i]!.length === 0 ? [`${part} is not drawn`] : []));
  // one and the same place of the picture puts each face where it is
  const [first = []] = places;
  const fits = first.filter((place) =>
    places.every((others) =>
      others.some(
        (other) =>
          Math.abs(other.factor - place.factor) < 0.002 &&
          Math.hypot(other.left - place.left, other.low - place.low) < 0.05,
      ),
    ),
  );
  if (wrong.length === 0 && fits.length === 0) wrong.push('rails and guide do not stand as the card says');
  for (const { factor } of fits) wrong.push(...wedgesAstray(card, drawn, factor));
  // the block under the stop rod is as high as the mortise is deep
  const upright = drawn.flatMap((one) =>
    one.kind === 'polyline' && one.part === 'depth block'
      ? one.points.slice(1).map((to, i) => [one.points[i]!, to] as const)
      : [],
  );
  for (const { factor } of fits) {
    const tall = upright
      .filter(([a, b]) => Math.abs(a[0] - b[0]) < 1e-3)
      .map(([a, b]) => Math.abs(a[1] - b[1]));
    if (!tall.some((mm) => Math.abs(mm - factor * UP * card.depth) < 0.02))
      wrong.push('the depth block is as high as nothing');
  }
  return wrong;
}

/** Whether a point lies in the loops, by how often a line from it leaves them. */
const lies = ([x, y]: Point, loops: readonly (readonly Point[])[]): boolean =>
  loops
    .flatMap((loop) => loop.map((a, i) => [a, loop[(i + 1) % loop.length]!] as const))
    .filter(([a, b]) => a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]))
    .length %
    2 ===
  1;

const stools = [carded(made('stool')), carded(made('stool', { treads: 2 }))] as const;

test('in the picture of every card each part that is set stands where the card says, and one that does not is found', () => {
  const [work] = stools;
  for (const card of work.cards) {
    expect(astray(card, drawnBy(card, work)), card.id).toEqual([]);
    const { nearRail, guideOffset } = card;
    const off = {
      ...card,
      ...(nearRail ? { nearRail: { ...nearRail, distance: nearRail.distance + 2 } } : {}),
      ...(guideOffset === undefined ? {} : { guideOffset: guideOffset + 4 }),
      depth: card.depth + 2,
    };
    expect(astray(card, drawnBy(off, work)), card.id).not.toEqual([]);
    if (!nearRail?.wedge) continue;
    const wedge = { ...nearRail.wedge, thickEnd: nearRail.wedge.thickEnd === 'up' ? 'down' : 'up' } as const;
    expect(astray({ ...card, nearRail: { ...nearRail, wedge } }, drawnBy(card, work))).toEqual([
      'a wedge leans as nothing',
    ]);
  }
});

test('every part of a set-up is named in its picture, and each word leads to its part', () => {
  for (const work of stools)
    for (const card of work.cards) {
      const drawn = drawnBy(card, work);
      const words = drawn.flatMap((one) => (one.kind === 'text' ? [one.text] : []));
      const wedged = card.nearRail?.wedge ?? card.farRail?.wedge;
      for (const [name, there] of [
        ['near rail', card.nearRail],
        ['far rail', card.farRail],
        ['guide board', card.guideOffset],
        ['wedge', wedged],
        ['plate', card.nearRail ?? card.farRail],
        ...['work', 'cutter', 'router', "router's base", 'depth block', 'stop rod', 'turret', 'stop'].map(
          (one) => [one, true] as const,
        ),
      ] as const)
        expect(words.includes(name), `${card.id} ${name}`).toBe(there !== undefined);
      drawn.forEach((one, i) => {
        if (one.kind !== 'text') return;
        const leader = drawn[i + 1];
        if (leader?.kind !== 'line') throw new Error(`${one.text} leads nowhere`);
        const parts = new Set(
          drawn.flatMap((any) => (any.kind === 'tone' && any.part.startsWith(one.text) ? [any.part] : [])),
        );
        expect(
          [...parts].some((part) => lies(leader.to, tonesOf(drawn, part))),
          `${card.id} ${one.text}`,
        ).toBe(true);
      });
    }
});

test('cards that are set alike are pictured alike, each by its name', () => {
  const [work] = stools;
  const room = { width: 84, height: 56 };
  const picture = (one: SetupCard) => setUpPicture({ kernel, design: work.design }, work, one, room)!;
  const [card] = work.cards;
  const tones = (one: SetupCard) =>
    picture(one)
      .draw([0, 0])
      .filter(({ kind }) => kind === 'tone');
  expect(tones({ ...card!, id: 'S9' })).toEqual(tones(card!));
  expect(picture({ ...card!, id: 'S9' }).said).toContain('Card S9');
});
