import type { Frame, Vec2 } from '../../frame/index.js';
import { intersectRegion, type Region } from '../../profile/index.js';
import { allSolids, boxIn, type Solids, section } from '../../solid/index.js';
import { SAME_LINE } from '../../tolerances.js';
import { type Box, hatchOf, path, type SheetEntity } from '../sheet/index.js';
import { viewPoint } from './placed-view.js';

/** A cut through the solids of a design. */
export interface Section {
  readonly frame: Frame;
  /** What is shown of the plane, mm in it. */
  readonly window: Box;
  readonly surfaces: readonly CutSurface[];
}

export interface CutSurface {
  readonly part: string;
  readonly kind: 'board' | 'tenon' | 'hardware';
  /** Inside the window. */
  readonly region: Region;
}

/** Neighbours are hatched different ways, tenons closely. */
const BOARD_ANGLES: readonly number[] = [45, 135, 60, 120, 30, 150];
const TENON_ANGLE = 15;

/**
 * Cuts every solid of a design by a plane.
 *
 * @param frame the plane: x right, y up, z toward the viewer, assembly frame
 * @param window in the plane's x and y; what lies outside is broken off
 */
export function sectionOf(solids: Solids, frame: Frame, window: Box): Section {
  const border: Region = [
    [
      [window.minX, window.minY],
      [window.maxX, window.minY],
      [window.maxX, window.maxY],
      [window.minX, window.maxY],
    ],
  ];
  const surfaces = allSolids(solids).flatMap(({ id, kind, body }): CutSurface[] => {
    const { min, max } = boxIn(body, frame);
    const meets =
      min[2] < 0 &&
      max[2] > 0 &&
      min[0] < window.maxX &&
      max[0] > window.minX &&
      min[1] < window.maxY &&
      max[1] > window.minY;
    if (!meets) return [];
    const region = intersectRegion(section(body, frame), border);
    return region.length === 0 ? [] : [{ part: id, kind, region }];
  });
  return { frame, window, surfaces };
}

/** A section on the sheet: cut surfaces hatched and outlined; where the window breaks them off, a narrow line. */
export function sectionEntities(
  { surfaces, window }: Section,
  at: Vec2,
  factor: number,
): readonly SheetEntity[] {
  let boards = 0;
  return surfaces.flatMap(({ part, kind, region }): SheetEntity[] => {
    const loops = region.map((loop) => loop.map((p) => viewPoint({ at, factor }, p)));
    const angle = kind === 'tenon' ? TENON_ANGLE : BOARD_ANGLES[boards++ % BOARD_ANGLES.length]!;
    return [
      hatchOf(part, loops, angle, kind === 'tenon' ? 1.3 : 3),
      ...region.flatMap((loop) =>
        outline(loop, window).map(
          ({ broken, points }): SheetEntity => ({
            ...path(
              broken ? 'dimension' : 'visible',
              points.map((p) => viewPoint({ at, factor }, p)),
            ),
            part,
          }),
        ),
      ),
    ];
  });
}

/** A loop in runs along the window's border and away from it. */
function outline(loop: readonly Vec2[], window: Box): { broken: boolean; points: Vec2[] }[] {
  const runs: { broken: boolean; points: Vec2[] }[] = [];
  loop.forEach((p, i) => {
    const q = loop[(i + 1) % loop.length]!;
    const broken = onBorder(p, q, window);
    const last = runs.at(-1);
    if (last && last.broken === broken) last.points.push(q);
    else runs.push({ broken, points: [p, q] });
  });
  return runs;
}

const onBorder = (p: Vec2, q: Vec2, { minX, minY, maxX, maxY }: Box): boolean => {
  const both = (axis: 0 | 1, at: number) =>
    Math.abs(p[axis] - at) < SAME_LINE && Math.abs(q[axis] - at) < SAME_LINE;
  return both(0, minX) || both(0, maxX) || both(1, minY) || both(1, maxY);
};
