import fc from 'fast-check';
import { expect, test } from 'vitest';
import jig from '../../models/jig.js';
import type { Design, Hardware } from '../../src/assembly/index.js';
import { benchOf, runChecks } from '../../src/checks/index.js';
import { InputError } from '../../src/errors.js';
import { add, pointIn, pointOut, subtract, type Vec2, type Vec3 } from '../../src/frame/index.js';
import { speaker } from '../../src/length/index.js';
import { describeParameters, readParameters } from '../../src/model/index.js';
import { area, bounds } from '../../src/profile/index.js';
import { allSolids, box, boxGap, genus, sharedVolume, solidsOf, startKernel } from '../../src/solid/index.js';
import { fastener } from '../../src/tables/index.js';

type Raw = Readonly<Record<string, string | number>>;
const values = (raw: Raw = {}) => readParameters(jig, raw, 'mm');
const built = (raw: Raw = {}) => jig.build(values(raw));
const figure = (design: Design, name: string) => design.derived.find((each) => each.name === name)!.value;
const boardOf = (design: Design, id: string) => design.boards.find(({ board }) => board.id === id)!;
const pieces = (design: Design, kind: Hardware['kind']) =>
  design.hardware.filter((each) => each.kind === kind);
const piece = (design: Design, id: string) => design.hardware.find((each) => each.id === id)!;

/** Where a piece stands in every pose, and as drawn. */
const places = (design: Design, { id, place }: Hardware): readonly Vec3[] => [
  place.origin,
  ...design.mechanism!.poses.map((pose) => add(place.origin, pose.shift[id] ?? [0, 0, 0])),
];

/** The gap between the rails' reference edges in a pose. */
const gapIn = (design: Design, pose: string) => {
  const { shift } = design.mechanism!.poses.find(({ name }) => name === pose)!;
  const y = (id: string) => boardOf(design, id).place.origin[1] + shift[id]![1];
  return y('far-rail') - y('near-rail');
};

test('the default jig has the sizes worked out by hand', () => {
  const design = built();
  const expected: Readonly<Record<string, number>> = {
    'slot width': 9, // ISO 273 medium, M8
    'slot length': 136, // 85 work + 40 rail + 9 bolt + 2
    'slot position': 105, // 75 base + 10 fingers + 20 knob
    'plate length': 269, // 2 (105 + 4.5 + 25)
    'plate width': 186, // 136 + 2 · 25
    'rail length': 369, // 269 + 2 · 50
    'counterbore depth': 7.3, // 5.3 head + 2
    'counterbore diameter': 18, // 13 · 2/√3 = 15.01, + 2, up
    'bolt length': 60, // 45 − 7.3 + 12 + 2 + 8 = 59.7, next ISO 888 length
    'bolt in knob': 8.3, // 60 − 51.7
    'screw length': 20, // at most 12 − 0.5 + 10 = 21.5
    'countersink diameter': 12.3, // 11.2 + 2 · 0.5 + 0.1
    'narrowest work': 20,
    'widest work': 87, // 136 − 9 − 40
  };
  for (const [name, value] of Object.entries(expected)) expect(figure(design, name)).toBeCloseTo(value, 9);
});

test('a bolt that would bottom is exchanged for the next shorter one in a deeper counterbore', () => {
  // rails 57 high: 57 − 7.3 + 14 + 8 = 71.7; the next length up, 80, passes 63.7 + 13 − 1 = 75.7, so 70, 1.7 deeper
  const design = built({ railHeight: 57, knobThread: 13 });
  expect(figure(design, 'bolt length')).toBe(70);
  expect(figure(design, 'counterbore depth')).toBeCloseTo(9, 9);
  expect(figure(design, 'bolt in knob')).toBeCloseTo(8, 9);
});

test('hardware is named as it is asked for over the counter', () => {
  const metric = built();
  expect(piece(metric, 'near-rail-bolt-1').name).toBe('hex bolt M8 × 60, ISO 4014');
  expect(piece(metric, 'screw-1').name).toBe(
    "countersunk screw M5 × 20, ISO 10642, as threaded in the router's base",
  );
  const inch = built({ boltSize: '5/16', screwSize: '1/4', plateThickness: 15 });
  expect(piece(inch, 'far-rail-bolt-2').name).toMatch(/^hex bolt 5\/16 × \d(-\d\/\d)?", ASME B18\.2\.1$/);
  expect(metric.hardware.filter((each) => !each.bought).map((each) => each.id)).toEqual([
    'router-base',
    'cutter',
  ]);
});

test('both rails are one piece made twice, with their reference edges against the work', () => {
  const design = built();
  const [near, far] = [boardOf(design, 'near-rail'), boardOf(design, 'far-rail')];
  expect({ ...near.board, id: '', name: '' }).toEqual({ ...far.board, id: '', name: '' });
  expect(gapIn(design, 'narrowest work')).toBeCloseTo(20, 9);
  expect(gapIn(design, 'widest work')).toBeCloseTo(87, 9);
  for (const rail of [near, far]) {
    // the outer lower edge is further from the work and below the plate
    const outer = pointOut(rail.place, [0, rail.board.blank.width, rail.board.blank.thickness]);
    expect(Math.abs(outer[1])).toBeCloseTo((20 + 87) / 4 + 40, 9);
    expect(outer[2]).toBeCloseTo(-45, 9);
  }
});

test('a round base with a flat has the area of its circle less the segment', () => {
  const base = piece(built({ routerBase: 'round-with-flats' }), 'router-base').stages[0]!.outline;
  const half = Math.acos(60 / 75);
  // circular segment r² (θ − sin θ) / 2
  expect(area(base)).toBeCloseTo(Math.PI * 75 ** 2 - (75 ** 2 * (2 * half - Math.sin(2 * half))) / 2, 6);
});

test('for all flats a base is what its circle and the planes of the flats leave, and no hole is let beyond any of them', () => {
  const flat = fc.option(fc.integer({ min: 30, max: 74 }), { nil: undefined });
  fc.assert(
    fc.property(flat, flat, flat, (near, far, sides) => {
      fc.pre(near !== undefined || far !== undefined || sides !== undefined);
      const flats = {
        ...(near && { baseFlat: near }),
        ...(far && { baseFlatFar: far }),
        ...(sides && { baseFlatSides: sides }),
      };
      const raw = {
        routerBase: 'round-with-flats',
        bitOpening: 12,
        cutter: 6,
        holeCircle: 42,
        holeStart: 45,
        screwSize: 'M5',
        ...flats,
      };
      const base = piece(built(raw), 'router-base').stages[0]!.outline;
      // a quarter of a thousand strips: as high as the circle there, cut off at the flats
      const strips = 250_000;
      const [left, right] = [-Math.min(75, sides ?? 75), Math.min(75, sides ?? 75)];
      const step = (right - left) / strips;
      let sum = 0;
      for (let x = left + step / 2; x < right; x += step) {
        const high = Math.sqrt(75 ** 2 - x ** 2);
        sum += step * (Math.min(high, far ?? high) + Math.min(high, near ?? high));
      }
      expect(area(base) / sum).toBeCloseTo(1, 5);
      const { minX, maxX, minY, maxY } = bounds(base);
      expect([minX, maxX, minY, maxY].map((one) => Math.round(one * 1e6) / 1e6)).toEqual([
        left,
        right,
        -Math.min(75, near ?? 75),
        Math.min(75, far ?? 75),
      ]);
    }),
    { numRuns: 20 },
  );
  const off = (raw: Raw, holePoints: string) =>
    built({ routerBase: 'round-with-flats', mounting: 'points', holePoints, ...raw });
  for (const [raw, hole] of [
    [{ baseFlat: 50 }, '0, -48; 0, 45'],
    [{ baseFlatFar: 50 }, '0, 48; 0, -45'],
    [{ baseFlatSides: 50 }, '48, 0; 0, -45'],
    [{ baseFlatSides: 50 }, '-48, 0; 0, -45'],
  ] as const)
    expect(() => off(raw, hole)).toThrow(/mounting hole 1 .* lies 2\.0 mm inside the edge/);
});

const sized = fc
  .record({
    routerBase: fc.constantFrom('round', 'rectangle', 'round-with-flats'),
    baseDiameter: fc.integer({ min: 120, max: 220 }),
    baseLength: fc.integer({ min: 120, max: 250 }),
    baseWidth: fc.integer({ min: 120, max: 250 }),
    boltSize: fc.constantFrom('M5', 'M6', 'M8', 'M10', '1/4', '5/16', '3/8'),
    screwSize: fc.constantFrom('M5', 'M6', '1/4'),
    knobDiameter: fc.integer({ min: 30, max: 45 }),
    knobThread: fc.integer({ min: 20, max: 30 }),
    knobClearance: fc.integer({ min: 3, max: 30 }),
    railWidth: fc.integer({ min: 40, max: 70 }),
    railHeight: fc.integer({ min: 45, max: 110 }),
    plateThickness: fc.integer({ min: 9, max: 24 }),
    baseThickness: fc.integer({ min: 8, max: 20 }),
    headBelow: fc.integer({ min: 2, max: 15 }).map((tenths) => tenths / 10),
    workMin: fc.integer({ min: 15, max: 50 }),
    range: fc.integer({ min: 0, max: 80 }),
    cutter: fc.integer({ min: 4, max: 10 }),
    holeCount: fc.integer({ min: 2, max: 6 }),
    holeCircle: fc.integer({ min: 80, max: 96 }),
    slots: fc.constantFrom('closed', 'open'),
    bridge: fc.integer({ min: 8, max: 40 }),
  })
  .map(
    ({ range, ...raw }): Raw => ({
      ...raw,
      workMax: raw.workMin + range,
      knobHeight: raw.knobThread + 8,
      bitOpening: 25,
      baseFlat: 54,
    }),
  );

test('for all valid sizes a knob clears the router base at every position of its rail', () => {
  fc.assert(
    fc.property(sized, (raw) => {
      const v = values(raw);
      const design = jig.build(v);
      for (const knob of pieces(design, 'knob')) {
        for (const [x, y] of places(design, knob)) {
          const toBase =
            v.routerBase === 'rectangle'
              ? Math.hypot(
                  Math.max(0, Math.abs(x) - v.baseLength / 2),
                  Math.max(0, Math.abs(y) - v.baseWidth / 2),
                )
              : Math.hypot(x, y) - v.baseDiameter! / 2;
          expect(toBase - v.knobDiameter / 2).toBeGreaterThanOrEqual(v.knobClearance - 1e-9);
        }
      }
      expect(design.mechanism!.keepApart.filter((rule) => rule.code === 'knob-near-base')).toHaveLength(4);
    }),
  );
});

test('for all valid sizes the slots cover every bolt over its whole travel, in the middle of the slot width', () => {
  fc.assert(
    fc.property(sized, (raw) => {
      const design = built(raw);
      const plate = boardOf(design, 'plate');
      for (const bolt of pieces(design, 'bolt')) {
        const radius = fastener(String(raw.boltSize)).diameter / 2;
        for (const at of places(design, bolt)) {
          const away = plate.board.slots.map((slot) => {
            const [along, across] = pointIn(slot.at, pointIn(plate.place, at));
            const straight = (slot.length - slot.width) / 2;
            const beyond = Math.max(0, Math.abs(along) - straight);
            return slot.width / 2 - Math.hypot(beyond, across) - radius;
          });
          expect(Math.max(...away)).toBeCloseTo(
            (fastener(String(raw.boltSize)).clearanceHole - 2 * radius) / 2,
            9,
          );
        }
      }
    }),
  );
});

test('for all valid sizes the jig grips the whole asked range', () => {
  fc.assert(
    fc.property(sized, (raw) => {
      const design = built(raw);
      expect(gapIn(design, 'narrowest work')).toBeLessThanOrEqual(Number(raw.workMin) + 1e-9);
      expect(gapIn(design, 'widest work')).toBeGreaterThanOrEqual(Number(raw.workMax) + 1);
      expect(design.mechanism!.reaches.map((reach) => reach.wanted)).toEqual([raw.workMin, raw.workMax]);
    }),
  );
});

test('for all valid sizes a bolt fills a diameter of its knob, its tip is free and its head is inside the rail', () => {
  fc.assert(
    fc.property(sized, (raw) => {
      const design = built(raw);
      const size = fastener(String(raw.boltSize));
      for (const bolt of pieces(design, 'bolt')) {
        const knob = piece(design, bolt.id.replace('bolt', 'knob'));
        const [head, shank] = bolt.stages;
        const entered = bolt.place.origin[2] + shank!.to - knob.place.origin[2];
        expect(entered).toBeGreaterThanOrEqual(size.diameter - 1e-9);
        expect(knob.stages[0]!.to - entered).toBeGreaterThanOrEqual(1 - 1e-9);
        expect(bolt.place.origin[2] + head!.from).toBeGreaterThanOrEqual(-Number(raw.railHeight) + 2 - 1e-9);
        const corners = head!.outline.map(({ x, y }) => Math.hypot(x, y));
        const rail = boardOf(design, bolt.id.replace(/-bolt-.*/, '')).board;
        expect(rail.holes[0]!.counterbore!.diameter / 2 - Math.max(...corners)).toBeGreaterThanOrEqual(
          1 - 1e-9,
        );
      }
    }),
  );
});

test('for all valid sizes the screw heads lie below the sliding face and inside their countersinks', () => {
  fc.assert(
    fc.property(sized, (raw) => {
      const design = built(raw);
      const plate = boardOf(design, 'plate');
      for (const [i, screw] of pieces(design, 'screw').entries()) {
        expect(screw.place.origin[2]).toBe(raw.headBelow);
        const hole = plate.board.holes[i]!;
        expect(pointOut(plate.place, hole.at.origin)[0]).toBeCloseTo(screw.place.origin[0], 9);
        expect(pointOut(plate.place, hole.at.origin)[1]).toBeCloseTo(screw.place.origin[1], 9);
        const { angleDeg, diameter } = hole.countersink!;
        const atHead = diameter / 2 - screw.place.origin[2] * Math.tan((angleDeg * Math.PI) / 360);
        const head = fastener(String(raw.screwSize)).countersunkHead.diameter / 2;
        expect(atHead - head).toBeCloseTo(0.05, 9);
        // threaded into the base by a diameter
        const tip = screw.place.origin[2] + screw.stages[1]!.to;
        expect(tip - Number(raw.plateThickness)).toBeGreaterThanOrEqual(
          fastener(String(raw.screwSize)).diameter - 1e-9,
        );
      }
    }),
  );
});

test('a slot made too short opens less than the thickest work, and the wish stays to be checked', () => {
  // 90 − 9 − 40
  const design = built({ slotLength: 90, workMax: 85 });
  expect(gapIn(design, 'widest work')).toBeCloseTo(41, 9);
  expect(design.mechanism!.reaches[1]).toMatchObject({ pose: 'widest work', wanted: 85, sense: 'at least' });
});

test('knobs too large for the rails keep them from closing on the thinnest work', () => {
  // 70 + 2 − 40
  expect(gapIn(built({ knobDiameter: 70, workMax: 70, railWidth: 40 }), 'narrowest work')).toBeCloseTo(32, 9);
});

test('overrides reach the boards and leave the limits for the checks', () => {
  const design = built({ slotPosition: 90, boltLength: 80, counterboreDepth: 9, plateWidth: 200 });
  expect(boardOf(design, 'plate').board.blank.width).toBe(200);
  expect(piece(design, 'near-rail-knob-1').place.origin[0]).toBeCloseTo(-90, 9);
  expect(piece(design, 'near-rail-bolt-1').stages[1]!.to).toBe(80);
  expect(boardOf(design, 'near-rail').board.holes[0]!.counterbore!.depth).toBe(9);
  expect(design.mechanism!.engagements.find((each) => each.screw === 'near-rail-bolt-1')).toEqual({
    screw: 'near-rail-bolt-1',
    nut: 'near-rail-knob-1',
    least: 8,
    tipAir: 1,
  });
});

test('screws that stand out of the router base are told with how far', () => {
  // 0.5 + 25 − 12 − 10
  expect(built({ screwLength: 25 }).notes.join()).toContain('screws stand 3.5 mm out of the router base');
  expect(built().notes.join()).not.toContain('out of the router base');
});

test('mounting holes come from a circle, points or measured distances, and notes say what was assumed', () => {
  const circle = built({ holeCircle: 80 * Math.SQRT2 });
  const points = built({ mounting: 'points' });
  const distances = built({ mounting: 'distances' });
  for (const design of [points, distances]) {
    expect(pieces(design, 'screw')).toHaveLength(4);
    pieces(design, 'screw').forEach((screw, i) => {
      const twin = piece(circle, `screw-${i + 1}`).place.origin;
      expect(Math.hypot(...screw.place.origin.map((x, k) => x - twin[k]!))).toBeLessThan(0.01);
    });
  }
  expect(distances.notes[0]).toBe('the centre of the cutter is the measured point c');
  expect(points.notes.join()).not.toContain('centre of the cutter');
  const turned = built({ mounting: 'distances', mirror: 'mirrored' });
  // the second of four at right angles becomes the fourth
  expect(piece(turned, 'screw-2').place.origin).toEqual(
    piece(distances, 'screw-4').place.origin.map((x) => expect.closeTo(x, 6)),
  );
});

test('a cutter whose centre was not measured is a warning, and the distances its remedy asks for end it and move the plate to it', async () => {
  // the true pattern, its cutter 2 mm off the middle of the circle through the holes
  const real = { 1: [50, 0], 2: [-20, 45], 3: [-25, -42], c: [2, 0] } as const;
  const pair = (name: string) => {
    const [[ax, ay], [bx, by]] = name.split('-').map((one) => real[one as keyof typeof real]) as [Vec2, Vec2];
    return `${name} ${Math.hypot(ax - bx, ay - by)}`;
  };
  const kernel = await startKernel();
  const judged = (raw: Raw) => {
    const design = built(raw);
    return { design, findings: runChecks(benchOf(solidsOf(kernel, design), speaker('mm'))) };
  };
  const warned = (holeDistances: string) => {
    const { findings, design } = judged({ mounting: 'distances', holeDistances });
    return { design, found: findings.filter(({ code }) => code === 'cutter-centre-assumed') };
  };
  const three = ['1-2', '2-3', '1-3'].map(pair).join('; ');
  const { found } = warned(three);
  expect(found).toMatchObject([{ level: 'warning', subjects: ['plate', 'cutter'], limit: 3 }]);
  const asked = /--hole-distances as (.+)$/.exec(found[0]!.remedy)![1]!.split(', ');
  const cured = warned([three, ...asked.map(pair)].join('; '));
  expect(cured.found).toEqual([]);
  const reach = pieces(cured.design, 'screw').map(
    ({
      place: {
        origin: [x, y],
      },
    }) => Math.hypot(x, y),
  );
  expect(reach).toEqual([1, 2, 3].map((name) => expect.closeTo(Number(pair(`c-${name}`).split(' ')[1]), 6)));
  // the jig as it comes has nothing to guess, however its holes are told
  for (const mounting of ['circle', 'points', 'distances'])
    expect(judged({ mounting }).findings.filter(({ level }) => level !== 'note')).toEqual([]);
  kernel.dispose();
});

test.each([
  [{ workMin: 70, workMax: 60 }, 'swap work-min and work-max'],
  [{ cutter: 12, bitOpening: 12 }, 'does not pass through an opening of 12 mm'],
  [{ routerBase: 'round-with-flats', baseFlat: 80 }, 'its flat is 80 mm from the cutter'],
  [{ holeCircle: 148, baseDiameter: 150 }, 'inside the edge of the router base'],
  [{ holeCircle: 40, bitOpening: 32 }, "of wood to the cutter's opening"],
  [{ plateThickness: 6, screwSize: 'M10', holeCircle: 100 }, 'use a thicker plate'],
  [{ knobThread: 8 }, 'use knobs with a deeper thread'],
  [{ knobThread: 30, knobHeight: 28 }, 'the thread must be less deep'],
  [{ slotLength: 45 }, 'leave no gap between two rails'],
  [{ railLength: 200 }, 'lengthen them'],
  [{ counterboreDepth: 4 }, 'standing proud'],
  [{ counterboreDepth: 40, railHeight: 45 }, 'make the rails higher'],
  [{ mounting: 'points', holePoints: '40 40' }, 'is not a point'],
  [{ mounting: 'distances', holeDistances: '1-2 10; 1-3 20; 2-3 40' }, 'make no triangle'],
  [{ plateMaterial: 'cheese' }, 'birch plywood'],
  [{ boltSize: 'M7' }, 'M8'],
])('a jig of %o is refused with the remedy', (raw, message) => {
  expect(() => built(raw as Raw)).toThrow(InputError);
  expect(() => built(raw as Raw)).toThrow(message);
});

test('a person who works in inches is told in inches what does not fit', () => {
  const told = (raw: Raw): string => {
    try {
      built(raw);
      return 'not refused';
    } catch (error) {
      // what a 1/64 leaves over is told in mm
      return (error as InputError).explain(speaker('in')).replace(/ \([+-][\d.]+ mm\)/g, '');
    }
  };
  // 12 / 25.4 = 0.4724, 70 / 25.4 = 2.7559, 60 / 25.4 = 2.3622, 80 / 25.4 = 3.1496
  expect(told({ cutter: 12, bitOpening: 12 })).toContain('a 0.4724" cutter does not pass');
  expect(told({ workMin: 70, workMax: 60 })).toContain(
    'the thinnest, 2.7559", is thicker than the thickest, 2.3622"',
  );
  expect(told({ routerBase: 'round-with-flats', baseFlat: 80 })).toContain(
    'its flat is 3.1496" from the cutter',
  );
  for (const raw of [
    { holeCircle: 148, baseDiameter: 150 },
    { baseDiameter: 100, holeCircle: 110 },
    { holeCircle: 40, bitOpening: 32 },
    { plateThickness: 6, screwSize: 'M10', holeCircle: 100 },
    { knobThread: 8 },
    { knobThread: 30, knobHeight: 28 },
    { slotLength: 45 },
    { railLength: 200 },
    { counterboreDepth: 4 },
    { counterboreDepth: 40, railHeight: 45 },
    { mounting: 'distances', holeDistances: '1-2 10; 1-3 20; 2-3 40' },
    { mounting: 'distances', holeDistances: '1-2 80; 2-3 80; 3-4 80; 1-4 80; 1-3 113.14; 2-4 117' },
  ]) {
    expect(told(raw), JSON.stringify(raw)).toContain('"');
    expect(told(raw), JSON.stringify(raw)).not.toContain('mm');
  }
});

test.each([
  [{}, 7],
  [
    { slots: 'open', boltSize: '3/8', screwSize: '1/4', plateThickness: 18, knobThread: 25, knobHeight: 34 },
    5,
  ],
  [
    {
      routerBase: 'round-with-flats',
      mounting: 'points',
      holePoints: '45,40; -45,40; 0,-50',
      boltSize: 'M6',
    },
    6,
  ],
  [{ routerBase: 'rectangle', mounting: 'distances', boltSize: 'M10', railWidth: 50 }, 7],
])(
  'the solids of a jig of %o share nothing in any pose, and its plate has %i through holes',
  async (raw, holes) => {
    const design = built(raw as Raw);
    const kernel = await startKernel();
    try {
      const solids = allSolids(solidsOf(kernel, design));
      // each slot that runs out is a notch, not a hole
      expect(genus(solids.find((solid) => solid.id === 'plate')!.body)).toBe(holes);
      const still: Vec3 = [0, 0, 0];
      const looked = new Set<string>();
      for (const { shift } of [{ shift: {} as Readonly<Record<string, Vec3>> }, ...design.mechanism!.poses]) {
        const standing = solids.map(({ id, body }) => kernel.keep(body.translate([...(shift[id] ?? still)])));
        const rooms = standing.map((one) => box(one));
        standing.forEach((one, i) => {
          standing.slice(i + 1).forEach((other, k) => {
            // two that moved alike stand to each other as before
            const [from, to] = [i, i + 1 + k].map((at) => shift[solids[at]!.id] ?? still) as [Vec3, Vec3];
            const pair = `${i} ${k} ${subtract(to, from)}`;
            if (looked.has(pair)) return;
            looked.add(pair);
            // bodies whose boxes stand apart share nothing
            if (boxGap(rooms[i]!, rooms[i + 1 + k]!) > 0) return;
            expect(sharedVolume(one, other)).toBeLessThan(0.01);
          });
        });
      }
    } finally {
      kernel.dispose();
    }
  },
);

test('bare numbers in a list of holes are in the units of the person, and the default says its own', () => {
  const inInches = readParameters(jig, { mounting: 'points', holePoints: '1.5, 1.5; -1.5, -1.5' }, 'in');
  const [screw] = pieces(jig.build(inInches), 'screw');
  expect(screw!.place.origin.slice(0, 2)).toEqual([38.1, 38.1]);
  const told = describeParameters(jig, 'in').find(({ option }) => option === 'hole-points')!.default;
  expect(told).toMatch(/^mm: 40, 40/);
  expect(readParameters(jig, { holePoints: told }, 'in').holePoints).toBe(told);
});

test('an inch bolt may be asked for with its mark', () => {
  for (const size of ['5/16"', '5/16 in', '5/16in', '5/16'])
    expect(values({ boltSize: size }).boltSize).toBe('5/16');
  expect(values({ boltSize: 'm8' }).boltSize).toBe('M8');
  expect(() => values({ boltSize: '7/16"' })).toThrow("bolt-size is '7/16\"'");
});

test('how a size is worked out is told in the units of the person', () => {
  const told = (units: 'mm' | 'in') =>
    describeParameters(jig, units).find(({ option }) => option === 'rail-length')!.default;
  expect(told('mm')).toBe('the plate and 50 mm beyond it at each end');
  // round in inches too
  expect(told('in')).toBe('the plate and 2" beyond it at each end');
});

test('screws in a base too thin for their thread are told to be thinner, not longer', async () => {
  const kernel = await startKernel();
  try {
    const remedies = (raw: Raw) =>
      new Set(
        runChecks(benchOf(solidsOf(kernel, built(raw)), speaker('mm')))
          .filter(({ code }) => code === 'bolt-too-short')
          .map(({ remedy }) => remedy),
      );
    expect([...remedies({ baseThickness: 4 })]).toEqual([
      'use a thinner screw: router-base has only 4.0 mm to screw into',
    ]);
    expect([...remedies({ screwLength: 8 })]).toEqual(['use the next longer one, or sink its head deeper']);
  } finally {
    kernel.dispose();
  }
});
