import type { PlacedBoard } from '../assembly/index.js';
import { faces } from '../board/index.js';
import { dot, frameOut, pointIn, pointOut, type Vec2, type Vec3 } from '../frame/index.js';
import { type Bounds, minimumRectangle, regionBounds, regionOf } from '../profile/index.js';
import type { Asked } from './asked.js';
import { type Margin, NOTHING, type Worked } from './margin.js';

/** Between these a small finger goes in and may stay, mm: CEN/TR 13387 (2004), as quoted in a consumers' report. */
const FINGER = { from: 5, to: 12 } as const;

/** Between these a small head goes in, and may not come out, mm: the first from memory; 230: 16 CFR 1513, for bunk beds. */
const HEAD = { from: 89, to: 230 } as const;

/** Faces that overlap by less than this make no opening, mm. */
const SIDE_BY_SIDE = 10;

/** Cosine between faces that look at each other. */
const FACING = -0.99;

/** Openings in boards and gaps between them, where a child uses the piece; notes alone. */
export function openings({ design, user }: Asked): Worked {
  if (!user.child) return NOTHING;
  const cut = design.boards.flatMap((placed) =>
    placed.board.openings.flatMap(({ id, outline }) => {
      const { width, centre } = minimumRectangle(regionOf(outline));
      const at = pointOut(placed.place, [centre[0], centre[1], placed.board.blank.thickness]);
      return noted(`the opening ${id} of ${placed.board.name}`, width, [placed.board.id], at);
    }),
  );
  const between = design.boards.flatMap((a, i) =>
    design.boards.slice(i + 1).flatMap((b) => {
      const gap = gapBetween(a, b);
      return gap
        ? noted(
            `the gap between ${a.board.name} and ${b.board.name}`,
            gap.wide,
            [a.board.id, b.board.id],
            gap.at,
          )
        : [];
    }),
  );
  return {
    margins: [...cut, ...between],
    notComputed: [
      {
        what: 'whether it is fit for a child',
        why: 'no figure of a standard for children was seen; openings, gaps and their sizes are told as notes, and a child is to be watched',
      },
      {
        what: 'where fingers are squeezed',
        why: 'a gap squeezes when one of its sides moves, and no board here is told to move; hinges, lids and drawers that you add are for you to look at: no gap between 7 and 18 mm while they move (EN 581-1, 2017)',
      },
    ],
  };
}

const noted = (name: string, wide: number, subjects: readonly string[], at: Vec3): readonly Margin[] => {
  const about = { subjects, figure: wide, unit: 'mm', better: 'more', at } as const;
  if (wide > FINGER.from && wide < FINGER.to)
    return [
      {
        ...about,
        code: 'finger-opening',
        what: `width of ${name}, where a small finger may stay`,
        note: FINGER.to,
        remedy: 'make it no wider than 5 mm, or at least 12 mm',
      },
    ];
  if (wide > HEAD.from && wide < HEAD.to)
    return [
      {
        ...about,
        code: 'head-opening',
        what: `width of ${name}, where a small head may stay`,
        note: HEAD.to,
        remedy: 'make it no wider than 89 mm, or at least 230 mm, or close it with a rail',
      },
    ];
  return [];
};

/** The least gap between two faces that look at each other side by side; boards that touch have none. */
function gapBetween(
  a: PlacedBoard,
  b: PlacedBoard,
): { readonly wide: number; readonly at: Vec3 } | undefined {
  const found: { wide: number; at: Vec3 }[] = [];
  for (const one of faces(a.board)) {
    const plane = frameOut(a.place, one.frame);
    const box = regionBounds(one.region);
    for (const other of faces(b.board)) {
      const facing = frameOut(b.place, other.frame);
      if (dot(plane.z, facing.z) > FACING) continue;
      const seen = other.region.flat().map(([x, y]) => pointIn(plane, pointOut(facing, [x, y, 0])));
      const wide = Math.min(...seen.map(([, , z]) => z));
      const both = common(box, regionBounds([seen.map(([x, y]): Vec2 => [x, y])]));
      if (wide < -SIDE_BY_SIDE || !both) continue;
      found.push({ wide, at: pointOut(plane, [both[0], both[1], wide / 2]) });
    }
  }
  const least = found.toSorted((p, q) => p.wide - q.wide)[0];
  return least && least.wide > 0 ? least : undefined;
}

/** The middle of what two boxes share, where they share enough. */
function common(p: Bounds, q: Bounds): Vec2 | undefined {
  const [x0, x1] = [Math.max(p.minX, q.minX), Math.min(p.maxX, q.maxX)];
  const [y0, y1] = [Math.max(p.minY, q.minY), Math.min(p.maxY, q.maxY)];
  return x1 - x0 > SIDE_BY_SIDE && y1 - y0 > SIDE_BY_SIDE ? [(x0 + x1) / 2, (y0 + y1) / 2] : undefined;
}
