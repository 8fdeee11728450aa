import type { Board } from '../../src/board/index.js';
import { bounds, type Profile, segments } from '../../src/profile/index.js';
import type { ReadBoard, ReadCut } from './read-board-page.js';

/** A printed figure is right to half its last place, mm or degrees. */
const HALF_STEP = 0.0501;

const near = (told: number | undefined, value: number): boolean =>
  told !== undefined && Math.abs(told - value) <= HALF_STEP;

/** What of a board does not follow from what its page says, in words; empty when the page is enough to make it. */
export function missingFrom(page: ReadBoard, board: Board, mark: string): readonly string[] {
  const { blank } = board;
  return [
    ...(['thickness', 'width', 'length'] as const).filter((size) => !near(page[size], blank[size])),
    ...missingCuts(page, board, mark),
    ...[board.outline, ...board.openings.map(({ outline }) => outline)].flatMap((loop) =>
      missingSides(page, loop, board),
    ),
    ...missingAngles(page, board),
  ];
}

/** Mortises, holes and slots: their sizes, depths and middles. */
function missingCuts(page: ReadBoard, board: Board, mark: string): readonly string[] {
  const cuts = [
    ...board.mortises.map((of, i) => ({ name: `M${i + 1}`, of, size: [of.width, of.length] })),
    ...board.holes.map((of, i) => ({ name: `H${i + 1}`, of, size: [of.diameter] })),
    ...board.slots.map((of, i) => ({ name: `L${i + 1}`, of, size: [of.width, of.length] })),
  ];
  return cuts.flatMap(({ name, of: { at, depth }, size }) => {
    const row = page.cuts.find(({ marks }) => (marks.get(mark) ?? marks.get('')) === name);
    if (!row) return [`${name}: no row`];
    const sizes = (row.cells.get('size') ?? '').replace(/,.*/, '').match(/[\d.]+/g) ?? [];
    const places = (['from end', 'from edge', 'from face'] as const).filter(
      (from, axis) =>
        Math.abs(at.z[axis as 0 | 1 | 2]) < 0.9 && !near(numberIn(row, from), at.origin[axis as 0 | 1 | 2]),
    );
    return [
      ...size
        .filter((one, i) => !near(Number(sizes[i]), one))
        .map((one) => `${name}: ${one} across or along`),
      ...((depth === 'through' ? row.cells.get('depth') === 'through' : near(numberIn(row, 'depth'), depth))
        ? []
        : [`${name}: depth`]),
      ...places.map((from) => `${name}: ${from}`),
    ];
  });
}

const numberIn = ({ cells }: ReadCut, column: string): number | undefined =>
  cells.has(column) ? Number(cells.get(column)) : undefined;

/** Straight sides by where they run, arcs by their radius. */
function missingSides(page: ReadBoard, loop: Profile, { blank }: Board): readonly string[] {
  const told = [0, blank.length, blank.width, ...page.figures];
  const isTold = (value: number) => told.some((one) => near(one, value));
  const pieces = segments(loop);
  const isRound = pieces.every(({ kind }) => kind === 'arc');
  const box = bounds(loop);
  if (isRound)
    return [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]
      .filter((value) => !isTold(value))
      .map((value) => `middle at ${value}`);
  return pieces.flatMap((piece, i): string[] => {
    if (piece.kind === 'arc')
      return page.radii.some((one) => near(one, piece.radius)) ? [] : [`radius ${piece.radius}`];
    const { from, to } = piece;
    const runs = ([0, 1] as const).filter((axis) => Math.abs(to[axis] - from[axis]) < 1e-6);
    if (runs.length > 0)
      return runs.filter((axis) => !isTold(from[axis])).map((axis) => `side at ${from[axis]}`);
    const besideArc = (at: number) => pieces[(at + pieces.length) % pieces.length]!.kind === 'arc';
    const ends = [...(besideArc(i - 1) ? [] : [from]), ...(besideArc(i + 1) ? [] : [to])];
    return ends.flatMap((end) => end.filter((value) => !isTold(value)).map((value) => `corner at ${value}`));
  });
}

/** Slanted sides and bevels, each as often as it is there. */
function missingAngles(page: ReadBoard, { outline, bevels }: Board): readonly string[] {
  const slants = segments(outline).flatMap((piece) => {
    if (piece.kind === 'arc') return [];
    const [dx, dy] = [0, 1].map((axis) => Math.abs(piece.to[axis as 0 | 1] - piece.from[axis as 0 | 1]));
    const deg = (Math.atan2(Math.min(dx!, dy!), Math.max(dx!, dy!)) * 180) / Math.PI;
    return deg > 0.01 ? [deg] : [];
  });
  const leans = bevels.map(({ normal }) => (Math.asin(Math.abs(normal[2])) * 180) / Math.PI);
  const left = [...page.anglesDeg];
  return [...slants, ...leans.map((deg) => Math.min(deg, 90 - deg))].flatMap((deg) => {
    const at = left.findIndex((one) => near(one, deg));
    if (at < 0) return [`angle ${deg}`];
    left.splice(at, 1);
    return [];
  });
}
