import fc from 'fast-check';
import type { Design, PlacedBoard } from '../../src/assembly/index.js';
import type { Mortise } from '../../src/board/index.js';
import { frame, frameOut, moved, type Vec3 } from '../../src/frame/index.js';
import type { Tenon } from '../../src/joinery/index.js';
import { built, type Wish, wishes } from './random-designs.js';

/** One fault in the data of a sound design, by a size that may be too small to matter. */
interface Fault {
  readonly what: keyof typeof FAULTS;
  /** Which tenon, mortise or board, as a share of their number. */
  readonly which: number;
  /** From -1 to 1. */
  readonly size: number;
  readonly more: number;
}

const turned = (deg: number) => {
  const turn = (deg * Math.PI) / 180;
  return frame([0, 0, 0], [0, Math.sin(turn), Math.cos(turn)], [1, 0, 0]);
};

const pick = <T>(list: readonly T[], share: number): T | undefined =>
  list[Math.min(list.length - 1, Math.floor(share * list.length))];

function withTenon(design: Design, which: number, spoil: (tenon: Tenon) => Tenon): Design {
  const one = pick(
    design.joints.flatMap(({ tenons }) => tenons),
    which,
  );
  return {
    ...design,
    joints: design.joints.map((joint) => ({
      ...joint,
      tenons: joint.tenons.map((tenon) => (tenon === one ? spoil(tenon) : tenon)),
    })),
  };
}

const withBoard = (design: Design, which: number, spoil: (placed: PlacedBoard) => PlacedBoard): Design => {
  const one = pick(design.boards, which);
  return { ...design, boards: design.boards.map((placed) => (placed === one ? spoil(placed) : placed)) };
};

function withMortise(design: Design, which: number, spoil: (mortise: Mortise) => Mortise): Design {
  const one = pick(
    design.boards.flatMap(({ board }) => board.mortises),
    which,
  );
  return {
    ...design,
    boards: design.boards.map((placed) => ({
      ...placed,
      board: {
        ...placed.board,
        mortises: placed.board.mortises.map((mortise) => (mortise === one ? spoil(mortise) : mortise)),
      },
    })),
  };
}

const FAULTS = {
  none: (design: Design) => design,
  'tenon length': (design: Design, { which, size }: Fault) =>
    withTenon(design, which, (t) => ({ ...t, length: t.length + 3 * size, intoB: t.intoB + 3 * size })),
  'tenon thickness': (design: Design, { which, size }: Fault) =>
    withTenon(design, which, (t) => ({ ...t, thickness: t.thickness * (1 + size / 8) })),
  'tenon width': (design: Design, { which, size }: Fault) =>
    withTenon(design, which, (t) => ({ ...t, width: Math.max(t.thickness, t.width + 4 * size) })),
  'mortise depth': (design: Design, { which, size }: Fault) =>
    withMortise(design, which, (m) => ({ ...m, depth: m.depth * (1 + size / 2) })),
  'mortise length': (design: Design, { which, size }: Fault) =>
    withMortise(design, which, (m) => ({ ...m, length: Math.max(m.width, m.length * (1 + size / 2)) })),
  'mortise width': (design: Design, { which, size }: Fault) =>
    withMortise(design, which, (m) => ({ ...m, width: Math.min(m.length, m.width * (1 + size / 2)) })),
  'mortise moved': (design: Design, { which, size, more }: Fault) =>
    withMortise(design, which, (m) => ({ ...m, at: frameOut(m.at, moved(turned(0), [size * 20, more, 0])) })),
  'mortise turned': (design: Design, { which, size }: Fault) =>
    withMortise(design, which, (m) => ({ ...m, at: frameOut(m.at, turned(size / 2)) })),
  'board moved': (design: Design, { which, size, more }: Fault) =>
    withBoard(design, which, ({ board, place }) => ({
      board,
      place: moved(place, [size / 4, more / 4, (size * more) / 4] as Vec3),
    })),
} as const;

const faults = fc.record({
  what: fc.constantFrom(...(Object.keys(FAULTS) as (keyof typeof FAULTS)[])),
  which: fc.double({ min: 0, max: 1, noNaN: true }),
  size: fc.double({ min: -1, max: 1, noNaN: true }),
  more: fc.double({ min: -1, max: 1, noNaN: true }),
});

/** Random designs, most of them with one fault in their data. */
export function* spoiltDesigns(
  count: number,
  seed: number,
): Generator<{ readonly name: string; readonly design: Design | undefined }> {
  const sampled: readonly (readonly [Wish, Fault])[] = fc.sample(fc.tuple(wishes, faults), {
    numRuns: count,
    seed,
  });
  for (const [wish, fault] of sampled) {
    const made = built(wish);
    yield {
      name: `${wish.model} ${JSON.stringify(wish.raw)}, ${JSON.stringify(fault)}`,
      design: made instanceof Error ? undefined : FAULTS[fault.what](made, fault),
    };
  }
}
