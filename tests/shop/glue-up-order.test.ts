import fc from 'fast-check';
import { expect, test } from 'vitest';
import { add, directionIn, dot, frame, scale, unit, type Vec3 } from '../../src/frame/index.js';
import { type Entry, orderOf } from '../../src/shop/index.js';

/** A joint as the search sees it, made by hand: no boards, a round clearance, nothing that bends. */
function entry(owner: string, receiver: string, axis: Vec3, engaged: number, clearance: number): Entry {
  const side: Vec3 = Math.abs(axis[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const place = frame([0, 0, 0], axis, side);
  const id = `${owner}/${receiver}`;
  const tenon = {
    id: `${id}/1`,
    place,
    thickness: 8,
    width: 40,
    length: 50,
    intoA: 25,
    intoB: engaged,
  };
  const joint = {
    id,
    a: owner,
    b: receiver,
    seat: place,
    contactAreaMm2: 1000,
    cutter: 8,
    fit: { cheek: clearance, edge: 2 * clearance, end: 1 },
    endInset: 10,
    web: 10,
    thinner: 20,
    tenons: [tenon],
  };
  return { joint, owner, receiver, axis, engaged, springs: [] };
}

/** Whether two groups go together in one move, worked out apart from the program. */
function goesTogether(first: readonly string[], crossing: readonly Entry[]): boolean {
  const ways = crossing.map(({ owner, axis }) => (first.includes(owner) ? axis : scale(axis, -1)));
  const sums = ways.flatMap((one) => ways.map((other) => add(one, other)));
  const all = ways.reduce((total, way) => add(total, way), [0, 0, 0] as Vec3);
  return [...sums, all]
    .filter((way) => Math.hypot(...way) > 1e-6)
    .map(unit)
    .some((travel) =>
      crossing.every(({ joint, engaged }, i) => {
        const forward = dot(travel, ways[i]!);
        if (forward < Math.SQRT1_2) return false;
        const [along, across] = directionIn(joint.seat, scale(travel, engaged / forward));
        return Math.abs(along) < joint.fit.edge / 2 + 1e-6 && Math.abs(across) < joint.fit.cheek + 1e-6;
      }),
    );
}

/** Every order there is, one merging after the other, from any two groups that touch. */
function someOrder(groups: readonly (readonly string[])[], entries: readonly Entry[]): boolean {
  if (groups.length === 1) return true;
  for (let i = 0; i < groups.length; i += 1) {
    for (let k = i + 1; k < groups.length; k += 1) {
      const [one, other] = [groups[i]!, groups[k]!];
      const crossing = entries.filter(
        ({ owner, receiver }) =>
          (one.includes(owner) && other.includes(receiver)) ||
          (other.includes(owner) && one.includes(receiver)),
      );
      if (crossing.length === 0 || !goesTogether(one, crossing)) continue;
      const merged = [...groups.filter((group) => group !== one && group !== other), [...one, ...other]];
      if (someOrder(merged, entries)) return true;
    }
  }
  return false;
}

const leaning = (x: number, y: number, z: number): Vec3 => unit([x, y, z]);
const axes: readonly Vec3[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, 0, -1],
  leaning(1, 0.004, 0),
  leaning(1, -0.004, 0),
  leaning(1, 0, 0.01),
  leaning(-1, 0.1, 0),
];

const designs = fc.integer({ min: 2, max: 5 }).chain((count) => {
  const ids = Array.from({ length: count }, (_, i) => `board-${i + 1}`);
  // a tree that holds all boards together, and some joints more
  const tree = ids
    .slice(1)
    .map((_, i) =>
      fc.record({ from: fc.nat({ max: i }), axis: fc.constantFrom(...axes), turned: fc.boolean() }),
    );
  const more = fc.array(
    fc.record({
      from: fc.nat({ max: count - 1 }),
      to: fc.nat({ max: count - 1 }),
      axis: fc.constantFrom(...axes),
    }),
    { maxLength: 3 },
  );
  return fc.record({ tree: fc.tuple(...tree), more }).map((of) => {
    const found = new Map<string, Entry>();
    const put = (owner: string, receiver: string, axis: Vec3) => {
      if (owner !== receiver && !found.has(`${receiver}/${owner}`))
        found.set(`${owner}/${receiver}`, entry(owner, receiver, axis, 25, 0.1));
    };
    of.tree.forEach(({ from, axis, turned }, i) => {
      if (turned) put(ids[i + 1]!, ids[from]!, axis);
      else put(ids[from]!, ids[i + 1]!, axis);
    });
    for (const { from, to, axis } of of.more) put(ids[from]!, ids[to]!, axis);
    return { ids, entries: [...found.values()] };
  });
});

test('an order is found exactly when a search over all orders finds one', () => {
  let [sound, stuck] = [0, 0];
  fc.assert(
    fc.property(designs, ({ ids, entries }) => {
      const order = orderOf(ids, entries);
      const some = someOrder(
        ids.map((id) => [id]),
        entries,
      );
      if (some) sound += 1;
      else stuck += 1;
      expect(order.conflict === undefined).toBe(some);
    }),
    { numRuns: 1500, seed: 7 },
  );
  // both verdicts come up often
  expect(Math.min(sound, stuck)).toBeGreaterThan(100);
});

test('every step of an order found joins two groups that stand already, and the last holds every board', () => {
  fc.assert(
    fc.property(designs, ({ ids, entries }) => {
      const { steps, conflict } = orderOf(ids, entries);
      fc.pre(conflict === undefined);
      const groups = new Map(ids.map((id) => [id, id]));
      for (const { moving, still } of steps) {
        for (const group of [moving, still]) {
          const standing = ids.filter(
            (id) => group.includes(groups.get(id)!) && groups.get(id) === groups.get(group[0]!),
          );
          expect(standing.toSorted()).toEqual([...group].toSorted());
        }
        for (const id of [...moving, ...still]) groups.set(id, still[0]!);
      }
      expect(steps).toHaveLength(ids.length - 1);
      expect(new Set(groups.values()).size).toBe(1);
    }),
    { numRuns: 500, seed: 11 },
  );
});

test('the boards named in a conflict cannot be put together, and all their joints are named', () => {
  fc.assert(
    fc.property(designs, ({ ids, entries }) => {
      const { conflict } = orderOf(ids, entries);
      fc.pre(conflict !== undefined);
      const among = (boards: readonly string[]) =>
        entries.filter(({ owner, receiver }) => boards.includes(owner) && boards.includes(receiver));
      expect(
        someOrder(
          conflict!.boards.map((id) => [id]),
          among(conflict!.boards),
        ),
      ).toBe(false);
      expect(conflict!.joints).toEqual(among(conflict!.boards).map(({ joint }) => joint.id));
    }),
    { numRuns: 500, seed: 13 },
  );
});

test('a chain of forty boards is ordered one board at a time', () => {
  const ids = Array.from({ length: 40 }, (_, i) => `board-${i + 1}`);
  const entries = ids.slice(1).map((id, i) => entry(ids[i]!, id, axes[i % axes.length]!, 25, 0.1));
  const { steps, conflict } = orderOf(ids, entries);
  expect(conflict).toBeUndefined();
  expect(steps).toHaveLength(39);
});
