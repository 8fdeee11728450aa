import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/assembly/index.js';
import { makeBoard, withGroove } from '../../src/board/index.js';
import { failed } from '../../src/checks/index.js';
import { stlFiles } from '../../src/files/solids/solid-files.js';
import { dot, frame, frameIn, frameOut, subtract, unit, type Vec3, WORLD } from '../../src/frame/index.js';
import { endsShape, type JoinOptions, type Joint, meanLength, PRACTICE } from '../../src/joinery/index.js';
import { speaker } from '../../src/length/index.js';
import { polygon } from '../../src/profile/index.js';
import { builtInShop, tenonSchedule } from '../../src/shop/index.js';
import { boardBody, box, doubleMesh, gap, volume } from '../../src/solid/index.js';
import { findings, onSolids } from '../checks/sample-design.js';
import { carded } from '../shop/made.js';
import { across, arched, design, lying, shelves, standing, table } from './crowded-designs.js';
import { refusal } from './on-the-bench.js';

const joint = ({ joints }: Design, id: string): Joint => joints.find((one) => one.id === id)!;
const sizes = ({ tenons }: Joint) => {
  const { width, intoA, intoB } = tenons[0]!;
  return [tenons.length, width, intoA, intoB].map((size) => Math.round(size * 1e6) / 1e6);
};
/** Some of these bare designs glue a top or a side across its grain: what the seasons do to them is looked at elsewhere. */
const errors = async (of: Design) =>
  (await findings(of)).filter(({ level, code }) => level === 'error' && code !== 'held-across-grain');

/** The least wood between mortises of two joints in a board, measured between the pieces of air each leaves alone. */
const leastWood = (of: Design): Promise<number> =>
  onSolids(of, ({ kernel, boards }) => {
    let least = 100;
    for (const { board, stock } of boards.values()) {
      const air = [...new Set(board.mortises.map((one) => one.joint))].map((id) => {
        const alone = { ...board, mortises: board.mortises.filter((one) => one.joint === id) };
        return kernel.keep(stock.subtract(kernel.keep(boardBody(kernel, alone, stock))));
      });
      air.forEach((p, i) => {
        for (const q of air.slice(i + 1)) least = Math.min(least, gap(p, q, least));
      });
    }
    return least;
  });

describe('two aprons that meet in a leg', () => {
  test('are mitred when nothing else is asked: 45°, as deep as to the far cheek of the other', () => {
    const { tenons } = joint(table(), 'front-apron/front-left-leg');
    const { mitreB, intoB, thickness } = tenons[0]!;
    expect(mitreB!.angleDeg).toBeCloseTo(45, 9);
    // half the leg and half the other tenon, less half the gap seen along the tenon: 1/2 · √2
    expect(intoB).toBeCloseTo(45 / 2 + thickness / 2 - Math.SQRT1_2, 9);
    expect(tenons[0]!.mitreA).toBeUndefined();
  });

  test('are not mitred where that is deeper than the cutter at hand cuts', () => {
    const depths = (deepest: number) =>
      table({ options: { deepest } })
        .boards.find(({ board }) => board.id === 'front-left-leg')!
        .board.mortises.map(({ depth }) => depth);
    const mitredAt = depths(100)[0]!;
    expect(depths(mitredAt)).toEqual(depths(100));
    for (const depth of depths(mitredAt - 0.5)) expect(depth).toBeLessThan(mitredAt - 0.5);
  });

  test('stop short of the bottom of mortises whose depth is told, though a mitre would take them deeper', async () => {
    const deep = 45 / 2 + 5.8 / 2 - Math.SQRT1_2 + 1;
    for (const depth of [deep - 2, deep - 0.5, deep, deep + 2]) {
      const of = table({ depth });
      const { mitreB, intoB } = joint(of, 'front-apron/front-left-leg').tenons[0]!;
      expect(mitreB!.angleDeg).toBeCloseTo(45, 9);
      expect(intoB).toBeCloseTo(Math.min(depth, deep) - 1, 9);
      expect(await errors(of), `${depth} mm deep`).toEqual([]);
    }
  });

  test('keep the gap asked for between their ends, measured on the solids, and lie on all sides within their mortises', async () => {
    for (const endGap of [0.5, 1, 2]) {
      const of = table({ options: { endGap } });
      await onSolids(of, (solids) => {
        for (const { id, tenons } of of.joints) {
          const { mitreB } = tenons[0]!;
          const other = solids.tenons.get(`${mitreB!.meets}/1`)!.body;
          expect(gap(solids.tenons.get(`${id}/1`)!.body, other, 5), id).toBeCloseTo(endGap, 3);
        }
      });
      expect(await errors(of)).toEqual([]);
    }
  });

  test('are as much wood as their mean length says: width by thickness with round edges', async () => {
    const of = table();
    await onSolids(of, (solids) => {
      for (const { tenon, body } of solids.tenons.values()) {
        const { width, thickness } = tenon;
        const section = width * thickness - (1 - Math.PI / 4) * thickness ** 2;
        expect(volume(body) / (section * meanLength(tenon))).toBeCloseTo(1, 3);
      }
    });
  });

  test('are told with the short point on the side of the board they meet, as their solids have it', async () => {
    const of = table();
    const kinds = tenonSchedule(of, builtInShop('mm'), speaker('mm'));
    const notes = kinds.flatMap(({ mitreNotes }) => mitreNotes);
    await onSolids(of, ({ boards, tenons: made }) => {
      for (const { id, a, tenons } of of.joints) {
        const note = notes.find((one) => one.startsWith(`joint ${id}:`))!;
        const [, into, towards] = /end in (\S+) mitred .* short point towards (\S+);/.exec(note)!;
        const { place } = tenons[0]!;
        const corners = doubleMesh(made.get(`${id}/1`)!.body).corners;
        const points = Array.from(
          { length: corners.length / 3 },
          (_, i) =>
            frameIn(place, { ...place, origin: [corners[3 * i]!, corners[3 * i + 1]!, corners[3 * i + 2]!] })
              .origin,
        );
        // how far the tenon reaches into that board on each of its cheeks
        const sense = into === a ? -1 : 1;
        const reach = (side: 1 | -1) =>
          Math.max(...points.filter((p) => p[1] * side > 0.1).map((p) => sense * p[2]));
        const middle = box(boards.get(towards!)!.body);
        const centre: Vec3 = [0, 1, 2].map((i) => (middle.min[i]! + middle.max[i]!) / 2) as unknown as Vec3;
        const side = dot(subtract(centre, place.origin), place.y) > 0 ? 1 : -1;
        expect(reach(side), note).toBeLessThan(reach(side === 1 ? -1 : 1) - 1);
      }
    });
    expect(notes).toHaveLength(of.joints.length);
  });

  test('a mitre gains what a magazine says or more: 15–20 % of length against tenons that keep a wall between', () => {
    const mean = (meet: 'mitre' | 'shorten') => {
      const { tenons } = joint(table({ options: { meet } }), 'front-apron/front-left-leg');
      const [tenon] = tenons;
      return meanLength(tenon!) - tenon!.intoA;
    };
    expect(mean('mitre') / mean('shorten')).toBeGreaterThan(1.15);
  });

  test.each(['shorten', 'butt', 'stagger'] as const)(
    '%s when it is asked for, and a wall stays between them',
    async (meet) => {
      const of = table({ options: { meet } });
      const ways = new Set(of.joints.flatMap(({ gaveWay = [] }) => gaveWay.map(({ way }) => way)));
      expect([...ways]).toEqual([meet]);
      expect(await leastWood(of)).toBeGreaterThan(PRACTICE.wall - 0.02);
      expect(await errors(of)).toEqual([]);
    },
  );

  test('set back to the outside they do not meet, and nothing is said', async () => {
    const of = table({ setback: 0 });
    expect(of.joints.every(({ gaveWay }) => gaveWay === undefined)).toBe(true);
    expect(await leastWood(of)).toBeGreaterThan(PRACTICE.wall - 0.02);
  });

  test('a top above them as well: their tenons start below its own', async () => {
    const of = table({ top: true });
    expect(await errors(of)).toEqual([]);
    for (const hand of ['left', 'right']) {
      const { tenons } = joint(of, `front-apron/front-${hand}-leg`);
      const top = joint(of, `top/front-${hand}-leg`);
      const bottom = 400 - top.tenons[0]!.intoB - top.fit.end;
      const highest = tenons[0]!.place.origin[2] + (tenons[0]!.width + 1) / 2;
      expect(bottom - highest).toBeGreaterThanOrEqual(PRACTICE.wall - 1e-6);
      // rounding of lengths down to half a millimetre leaves no more than that
      expect(bottom - highest).toBeLessThan(PRACTICE.wall + 0.51);
    }
  });

  test('two ways that contradict are refused; a way that cannot be had is refused with what stands in it', () => {
    const of = (front: object, left: object) => () =>
      design(
        table().boards.map(({ board, place }) => ({ board: { ...board, mortises: [] }, place })),
        [
          { a: 'front-apron', b: 'front-left-leg', options: front },
          { a: 'left-apron', b: 'front-left-leg', options: left },
        ],
      );
    expect(refusal(of({ meet: 'mitre' }, { meet: 'stagger' })).message).toContain(
      'front-apron/front-left-leg says mitre, left-apron/front-left-leg says stagger: give both joints the same meet, or leave one out',
    );
    const depths = { 'front-left-leg': 22 };
    expect(refusal(of({ meet: 'shorten', depths }, {})).message).toContain(
      'meet is shorten, but its tenons cannot make way for left-apron/front-left-leg in front-left-leg like that',
    );
    // the remedy: leave meet out
    expect(of({ depths }, {})().joints).toHaveLength(2);
  });
});

test('the order joints are asked for in changes no figure', () => {
  const of = table({ top: true });
  const bare = of.boards.map(({ board, place }) => ({ board: { ...board, mortises: [] }, place }));
  const requests = of.joints.map(({ a, b }) => ({ a, b }));
  const first = design(bare, requests);
  const turned = requests.map((_, i) => requests[(i * 5 + 3) % requests.length]!);
  for (const order of [requests.toReversed(), turned]) {
    const other = design(bare, order);
    for (const { id, ...rest } of first.joints)
      expect({ ...joint(other, id), gaveWay: 0 }).toEqual({ id, ...rest, gaveWay: 0 });
  }
});

test('equal corners are equal: four of a table have the same tenons, wherever the table stands', () => {
  for (const of of [table(), table({ top: true }), table({ options: { meet: 'stagger' } })]) {
    for (const apron of ['front', 'back']) {
      for (const hand of ['left', 'right']) {
        expect(sizes(joint(of, `${apron}-apron/${apron}-${hand}-leg`))).toEqual(
          sizes(joint(of, 'front-apron/front-left-leg')),
        );
      }
    }
  }
});

describe('two shelves opposite each other', () => {
  test('in a thick upright both get shorter, to a wall between their bottoms', async () => {
    const of = shelves({ thick: 30 });
    // (30 − 6) / 2 deep, less the end gap
    for (const { tenons } of of.joints) expect(tenons[0]!.intoB).toBeCloseTo(11, 9);
    expect(await leastWood(of)).toBeCloseTo(PRACTICE.wall, 2);
    expect(await errors(of)).toEqual([]);
  });

  test('in a thin one they take turns along the row, each half the thickness deep', async () => {
    const of = shelves();
    const rows = of.joints.map(({ tenons }) => tenons.map(({ place }) => place.origin[1]));
    for (const { tenons } of of.joints) expect(tenons[0]!.intoB).toBeCloseTo(9, 9);
    const both = rows.flatMap((row, i) => row.map((at) => [at, i] as const)).toSorted(([p], [q]) => p - q);
    expect(both.every(([, i], k) => k === 0 || i !== both[k - 1]![1])).toBe(true);
    expect(await leastWood(of)).toBeGreaterThan(PRACTICE.wall - 0.02);
    expect(await errors(of)).toEqual([]);
    expect(shelves({ swapped: true }).joints.toReversed()).toEqual(of.joints);
  });
});

test('a hole that is there already is kept clear of', async () => {
  const [post, rail] = [
    standing('post', [400, 60, 60], [0, 0, 0]),
    across('rail', [300, 90, 24], [60, 18, 150]),
  ];
  const bolt = {
    id: 'bolt',
    face: 'opposite-edge',
    at: { origin: [180, 60, 30], x: [1, 0, 0], y: [0, 0, 1], z: [0, 1, 0] },
    diameter: 8,
    depth: 'through',
  } as const;
  const bored = { ...post, board: { ...post.board, holes: [bolt] } };
  const of = design([bored, rail], [{ a: 'rail', b: 'post' }]);
  expect(await errors(of)).toEqual([]);
  const [{ place, width }] = of.joints[0]!.tenons as [Joint['tenons'][number]];
  expect(Math.abs(place.origin[2] - 180) - (width + 1) / 2).toBeGreaterThanOrEqual(4 + PRACTICE.wall - 1e-6);
  // without the hole the mortise would lie there
  const free = design([post, rail], [{ a: 'rail', b: 'post' }]);
  expect(Math.abs(free.joints[0]!.tenons[0]!.place.origin[2] - 180)).toBeLessThan(20);
});

describe('boards that touch in several patches', () => {
  test('two feet get a joint each, one in each foot', async () => {
    const of = arched();
    expect(of.joints.map(({ id }) => id)).toEqual(['side/plinth.1', 'side/plinth.2']);
    const middles = of.joints.map(({ seat }) => seat.origin[0]);
    // feet 60 wide at both ends of 320, from x = 30
    expect(middles.map((x) => x.toFixed(6))).toEqual(['60.000000', '320.000000']);
    expect(await errors(of)).toEqual([]);
  });

  test('a foot without room is told with its size, and the other is joined', async () => {
    const of = arched({ foot2: 20 });
    expect(of.joints.map(({ id }) => id)).toEqual(['side/plinth']);
    const told = (await findings(of)).filter(({ code }) => code === 'patch-without-tenon');
    expect(told).toHaveLength(1);
    expect(told[0]!.measured).toBeCloseTo(20 * 25, 3);
    expect(told[0]!.message).toContain('side and plinth also touch on a patch 25.0 mm × 20.0 mm');
    // its remedy
    expect(failed(await findings(of))).toBe(false);
    expect(
      (await findings(arched({ foot2: 20, options: { patches: 'largest' } }))).map(({ code }) => code),
    ).not.toContain('patch-without-tenon');
  });

  test('the ones named are joined, and one that is not there is refused', () => {
    expect(arched({ options: { patches: [2] } }).joints[0]!.seat.origin[0]).toBeCloseTo(320, 6);
    expect(refusal(() => arched({ options: { patches: [3] } })).message).toBe(
      'joint side/plinth: it asks for patch 3, but its boards touch in 2: give numbers from 1 to 2',
    );
    expect(refusal(() => arched({ foot2: 20, options: { patches: [1, 2] } })).code).toBe('no-room');
  });

  test('joined twice they are refused, unless each joint has a patch of its own', () => {
    const twice = (one: JoinOptions, other: JoinOptions) =>
      design(
        arched().boards.map(({ board, place }) => ({ board: { ...board, mortises: [] }, place })),
        [
          { a: 'side', b: 'plinth', options: one },
          { a: 'plinth', b: 'side', options: { ...other, id: 'again' } },
        ],
      );
    expect(refusal(() => twice({}, {})).message).toBe(
      'joint again.1: joint side/plinth.1 joins plinth and side in the same place already: leave one of the two out, or give each its own patches or places',
    );
    expect(twice({ patches: [1] }, { patches: [2] }).joints).toHaveLength(2);
  });

  test('with no room anywhere the largest is refused', () => {
    expect(refusal(() => arched({ foot: 22, foot2: 20 })).message).toContain('its seat is 25.0 mm long');
  });
});

describe('rows', () => {
  const long = (options: object, thick = 30) =>
    design(
      [lying('one', [1200, 90, thick], [0, 0, 0]), lying('two', [1200, 90, thick], [0, 90, 0])],
      [{ a: 'one', b: 'two', options }],
    ).joints[0]!;
  const at = ({ seat, tenons }: Joint) =>
    tenons.map(({ place }) => dot(subtract(place.origin, seat.origin), seat.x)).toSorted((p, q) => p - q);

  test('a glued-up seam is lined up by a tenon every 150 to 250 mm (common practice, no source)', () => {
    for (const whole of [320, 560, 900, 1200, 1333]) {
      const { joints } = design(
        [lying('one', [whole, 90, 30], [0, 0, 0]), lying('two', [whole, 90, 30], [0, 90, 0])],
        [{ a: 'one', b: 'two' }],
      );
      const places = at(joints[0]!);
      for (const [i, place] of places.slice(1).entries()) {
        expect(place - places[i]!).toBeGreaterThanOrEqual(150);
        expect(place - places[i]!).toBeLessThanOrEqual(250);
      }
      expect(joints[0]!.tenons[0]!.width).toBe(PRACTICE.tenonWidth);
    }
  });

  test('number, spacing and places are as asked', () => {
    expect(at(long({ tenons: 3 }))).toHaveLength(3);
    const spaced = at(long({ spacing: 160, tenonWidth: 50 }));
    // (1200 − 2·12.7 − 51) / 160, and one more
    expect(spaced).toHaveLength(8);
    for (const [i, place] of spaced.slice(1).entries()) expect(place - spaced[i]!).toBeCloseTo(160, 9);
    expect(at(long({ places: [-300, 0, 420] })).map((x) => Math.round(x))).toEqual([-300, 0, 420]);
    expect(refusal(() => long({ places: [0, 10] })).message).toContain('move the places apart');
    expect(refusal(() => long({ places: [0], tenons: 2 })).message).toContain('give the places alone');
  });

  test('two rows in thick stock leave three equal walls, and a cutter near a fifth', () => {
    const of = long({ rows: 2, tenons: 2 }, 60);
    const heights = [
      ...new Set(of.tenons.map(({ place }) => Math.round(place.origin[2] * 1e6) / 1e6)),
    ].toSorted((p, q) => p - q);
    expect(of.cutter).toBe(12);
    // (60 − 24) / 3 = 12 of wood, then 6 to the middle
    expect(heights).toEqual([18, 42]);
    expect(of.tenons).toHaveLength(4);
    expect(refusal(() => long({ rows: 2 }, 20)).message).toContain('ask for one row');
    expect(refusal(() => long({ rows: 3 })).message).toContain('it asks for 3 rows: give 1 or 2');
  });
});

test('mortises run along the edge of the board that is named', () => {
  const [top, post] = [
    lying('top', [300, 200, 30], [0, 0, 100]),
    standing('post', [100, 60, 60], [100, 60, 0]),
  ];
  const along = (options: object) => {
    const { seat } = design([top, post], [{ a: 'post', b: 'top', options }]).joints[0]!;
    return [Math.abs(seat.x[0]), Math.abs(seat.x[1])].map((part) => Math.round(part * 1e6) / 1e6);
  };
  // the post's width runs to the right, as the top's grain does
  expect(along({})).toEqual([1, 0]);
  expect(along({ turned: true })).toEqual([0, 1]);
  const turn = Math.PI / 6;
  const askew = {
    ...post,
    place: {
      ...post.place,
      y: [Math.cos(turn), Math.sin(turn), 0],
      z: [-Math.sin(turn), Math.cos(turn), 0],
    } as const,
  };
  const seat = (options: object) =>
    design([top, askew], [{ a: 'post', b: 'top', options }]).joints[0]!.seat.x;
  expect(dot(seat({}), askew.place.y)).toBeCloseTo(1, 9);
  expect(dot(seat({ along: 'post' }), askew.place.y)).toBeCloseTo(1, 9);
  expect(dot(seat({ along: 'top' }), [1, 0, 0])).toBeCloseTo(1, 9);
  expect(refusal(() => seat({ along: 'lid' })).message).toContain('name post or top');
});

test('a seat ends where a groove begins', async () => {
  const [post, rail] = [
    standing('post', [400, 60, 60], [0, 0, 0]),
    across('rail', [300, 90, 24], [60, 18, 150]),
  ];
  const groove = { face: 'opposite-edge', from: 'opposite-face', distance: 27, width: 6, depth: 8 } as const;
  // its end stands 20 mm above the lower edge of the rail
  const grooved = { ...post, board: withGroove(post.board, { ...groove, stop: { end: 400 - 170 } }) };
  const of = design([grooved, rail], [{ a: 'rail', b: 'post' }]);
  // nothing has to make way for it: 12.7 of wood stands between the mortise and the groove's end
  expect(of.joints[0]!.gaveWay).toBeUndefined();
  const { at, length } = of.boards[0]!.board.mortises[0]!;
  expect(at.origin[0] - length / 2).toBeGreaterThanOrEqual(170 + 12.7 - 1e-6);
  expect(await errors(of)).toEqual([]);
});

test('a leg that leans alike both ways has a rhombus for a seat: its mortises run along its own width, in every corner', () => {
  const seat = lying('seat', [400, 300, 30], [0, 0, 400]);
  for (const [ty, tz] of [
    [0.2, 0.2],
    [0.2, -0.2],
    [-0.2, 0.2],
  ] as const) {
    for (const turn of [0.1, 0.6, 1.1, 2]) {
      const normal = unit([1, ty, tz]);
      const leg = makeBoard({
        id: 'leg',
        blank: { length: 420, width: 60, thickness: 60 },
        bevels: [{ id: 'top', point: [400, 30, 30], normal }],
      });
      const onSeat = frame([200, 150, 400], [0, 0, 1], [Math.cos(turn), Math.sin(turn), 0]);
      const place = frameOut(onSeat, frameIn(frame([400, 30, 30], normal, [0, 1, 0]), WORLD));
      const joint = (options: object) =>
        design([seat, { board: leg, place }], [{ a: 'seat', b: 'leg', options }]).joints[0]!;
      const along = ({ seat: { x } }: Joint, way: Vec3) => Math.abs(dot(x, unit([way[0], way[1], 0])));
      expect(along(joint({}), place.y)).toBeGreaterThan(0.99);
      expect(along(joint({ along: 'seat' }), [1, 0, 0])).toBeCloseTo(1, 9);
    }
  }
});

test('boards that also touch at the cheeks of a notch are joined at its floor, and the cheeks are told of', async () => {
  const notched = makeBoard({
    id: 'side',
    blank: { length: 300, width: 320, thickness: 25 },
    outline: polygon([
      { x: 0, y: 0 },
      { x: 300, y: 0 },
      { x: 300, y: 320 },
      { x: 0, y: 320 },
      { x: 0, y: 200 },
      { x: 30, y: 200 },
      { x: 30, y: 120 },
      { x: 0, y: 120 },
    ]),
  });
  const rail = {
    board: makeBoard({ id: 'rail', blank: { length: 400, width: 80, thickness: 30 } }),
    // its grain runs away, through the notch
    place: frame([-120, -150, 0], [0, 0, 1], [0, 1, 0]),
  };
  const of = design(
    [{ board: notched, place: frame([0, 0, 0], [0, -1, 0], [0, 0, 1]) }, rail],
    [{ a: 'side', b: 'rail' }],
  );
  expect(of.joints.map(({ id }) => id)).toEqual(['side/rail']);
  expect(Math.abs(of.joints[0]!.seat.z[2])).toBeCloseTo(1, 9);
  const told = (await findings(of)).filter(({ code }) => code === 'patch-without-tenon');
  expect(told.map(({ measured }) => measured.toFixed(3))).toEqual(['750.000', '750.000']);
  expect(told[0]!.message).toContain('this patch faces another way than the largest');
});

test('papers tell of mitred tenons: a kind of their own, which end, which way round, and the card warns of the break-through', () => {
  const { cards, design: of } = carded(table());
  const kinds = tenonSchedule(of, builtInShop('mm'), speaker('mm'));
  expect(kinds.map(({ count }) => count)).toEqual([8]);
  const [{ mitres, mitreNotes, length, edges }] = kinds as [(typeof kinds)[0]];
  expect(mitres[0]).toMatchObject({ board: 'front-left-leg', meets: 'left-apron/front-left-leg' });
  // the other apron's side of the leg: its end there is the short point
  expect(mitreNotes[0]).toContain('short point towards left-apron');
  expect(mitreNotes).toHaveLength(8);
  const [tenon] = of.joints[0]!.tenons;
  // cheeks: two, the one shorter by the thickness at 45°
  const { thickness, width } = tenon!;
  expect(edges.find(({ style }) => style === 'round')!.cheekAreaMm2).toBeCloseTo(
    (width - thickness) * (length + length - thickness),
    6,
  );
  const warned = cards.filter(({ cautions }) => cautions.some((text) => text.includes('open into others')));
  const inLegs = cards.filter(({ cuts }) => cuts.some(({ board }) => board.endsWith('leg')));
  expect(warned.map(({ id }) => id)).toEqual(inLegs.map(({ id }) => id));
  // square ends are another kind
  const square = tenonSchedule(table({ setback: 0 }), builtInShop('mm'), speaker('mm'));
  expect(square.every(({ mitreNotes: none }) => none.length === 0)).toBe(true);
});

test('a mitred tenon has a solid file of its own, as much wood as its mean length', async () => {
  const of = table();
  await onSolids(of, (solids) => {
    const tenons = stlFiles(solids, [], 'binary').filter(({ path }) => path.startsWith('stl/tenon-'));
    expect(tenons.map(({ path }) => path)).toEqual(['stl/tenon-5.8x53.5x46.89-mitred-45.mm.stl']);
  });
  expect(endsShape(of.joints[0]!.tenons[0]!)).toBe('mitred-45');
  const both = { ...of.joints[0]!.tenons[0]! };
  const end = both.mitreB!;
  expect(endsShape({ ...both, mitreA: end })).toBe('mitred-45-45');
  expect(endsShape({ ...both, mitreA: { ...end, long: end.long === 1 ? -1 : 1 } })).toBe(
    'mitred-45-45-slanted',
  );
});
