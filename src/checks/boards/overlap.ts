import { add, subtract, type Vec3 } from '../../frame/index.js';
import { once } from '../../once.js';
import {
  allSolids,
  type Box,
  box,
  type Outside,
  outsideIn,
  outsideOf,
  parted,
  type Solid,
  sharedBox,
  sharedVolume,
} from '../../solid/index.js';
import { OVERLAP_MM3 } from '../../tolerances.js';
import type { Bench } from '../bench/index.js';
import { type Finding, MEASURED } from '../finding/index.js';

/** A piece where it stands in one pose. */
interface Standing {
  readonly solid: Solid;
  readonly box: Box;
  readonly shift: Vec3;
  /** Corners and faces where it is placed. */
  readonly outside: () => Outside;
}

const STILL: Vec3 = [0, 0, 0];

/** No two boards, tenons or pieces of hardware share wood or metal, as placed and in every pose. */
export function overlap(bench: Bench): readonly Finding[] {
  const { solids } = bench;
  const placed = allSolids(solids).map((solid) => ({
    solid,
    box: box(solid.body),
    shift: STILL,
    outside: once(() => outsideOfSolid(solid)),
  }));
  const clear = clearTenons(bench);
  const found = nearPairs(placed)
    .filter(([a, b]) => !clear.has(pairKey(a.solid.id, b.solid.id)))
    .flatMap((pair) => overlapOf(bench, pair, undefined));
  const posed = (solids.design.mechanism?.poses ?? []).flatMap((pose) => {
    const moved = placed.map((piece) => {
      const shift = pose.shift[piece.solid.id] ?? STILL;
      const { min, max } = piece.box;
      return { ...piece, shift, box: { min: add(min, shift), max: add(max, shift) } };
    });
    return nearPairs(moved)
      .filter(([a, b]) => subtract(a.shift, b.shift).some((part) => part !== 0))
      .flatMap((pair) => overlapOf(bench, pair, pose.name));
  });
  return worstOfEachPair([...found, ...posed]);
}

/** A board's stock holds all of it, with fewer corners. */
function outsideOfSolid(solid: Solid): Outside {
  if (solid.kind === 'board') return outsideIn(outsideOf(solid.stock), solid.place);
  if (solid.kind === 'tenon') return outsideIn(outsideOf(solid.own), solid.tenon.place);
  return outsideOf(solid.body);
}

/** Two pieces that meet in several positions are told of once, where they meet most. */
function worstOfEachPair(found: readonly Finding[]): readonly Finding[] {
  const worst = new Map<string, Finding>();
  for (const finding of found) {
    const key = finding.subjects.join('\n');
    const known = worst.get(key);
    if (!known || finding.measured > known.measured) worst.set(key, finding);
  }
  return [...worst.values()];
}

/** Tenons whose clearance in a board was measured and is more than nothing need no second look. */
function clearTenons(bench: Bench): ReadonlySet<string> {
  const clear = bench.tenons.flatMap(({ tenon, mortises }) =>
    mortises
      .filter((mortise) => mortise.flankClearance > 0 && mortise.bottomClearance > 0)
      .map((mortise) => pairKey(tenon.id, mortise.board)),
  );
  return new Set(clear);
}

const pairKey = (a: string, b: string): string => (a < b ? `${a}\n${b}` : `${b}\n${a}`);

/** Pairs whose boxes meet, swept along x; pairs far apart never reach the kernel. */
function nearPairs(pieces: readonly Standing[]): [Standing, Standing][] {
  const order = pieces.toSorted((p, q) => p.box.min[0] - q.box.min[0]);
  const pairs: [Standing, Standing][] = [];
  let open: Standing[] = [];
  for (const piece of order) {
    open = open.filter((other) => other.box.max[0] > piece.box.min[0]);
    for (const other of open) {
      const meet = [1, 2].every(
        (i) => other.box.max[i]! > piece.box.min[i]! && piece.box.max[i]! > other.box.min[i]!,
      );
      if (meet) pairs.push([other, piece]);
    }
    open.push(piece);
  }
  return pairs;
}

function overlapOf(bench: Bench, [p, q]: [Standing, Standing], pose: string | undefined): Finding[] {
  const by = subtract(q.shift, p.shift);
  if (parted(q.outside(), p.outside(), by)) return [];
  const moved = by.some((part) => part !== 0) ? q.solid.body.translate([...by]) : undefined;
  const other = moved ?? q.solid.body;
  const shared = sharedVolume(p.solid.body, other);
  if (!(shared > OVERLAP_MM3)) {
    moved?.delete();
    return [];
  }
  const where = sharedBox(p.solid.body, other);
  moved?.delete();
  const { say } = bench;
  const middle = where.min.map((least, i) => say.length((least + where.max[i]!) / 2)).join(', ');
  const thin = Math.min(...where.max.map((most, i) => most - where.min[i]!));
  const subjects = [p.solid.id, q.solid.id].toSorted();
  const when = pose ? ` with the jig at its ${pose}` : '';
  return [
    {
      code: 'pieces-overlap',
      level: 'error',
      subjects,
      measured: shared,
      limit: 0,
      unit: 'mm³',
      message: `${subjects[0]} and ${subjects[1]} share ${say.volume(shared)}, about ${say.fine(thin)} thick, near ${middle}${when}: two pieces cannot share one place`,
      remedy: 'move or shorten one of them until they only touch',
      basis: MEASURED,
    },
  ];
}
