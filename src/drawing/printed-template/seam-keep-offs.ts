import { type Board, entersWideFace } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import type { Box } from '../sheet/index.js';

/** What no seam is to cross: windows and holes in a wide face; of what enters an edge, its centre and end marks. */
export const seamKeepOffs = (board: Board): readonly Box[] => {
  const round = ([x, y]: Vec2, rx: number, ry: number): Box => ({
    minX: x - rx,
    maxX: x + rx,
    minY: y - ry,
    maxY: y + ry,
  });
  return [
    ...[...board.mortises, ...board.slots].flatMap(({ at, face, length, width }) => {
      const [x, y] = at.origin;
      const [half, r] = [(length - width) / 2, width / 2];
      if (entersWideFace(face))
        return [round([x, y], Math.abs(at.x[0]) * half + r, Math.abs(at.x[1]) * half + r)];
      return [-length / 2, 0, length / 2].map((run) => round([x + at.x[0] * run, y + at.x[1] * run], 0, 0));
    }),
    ...board.holes.map(({ at, diameter, counterbore, countersink }) => {
      const r = Math.max(diameter, counterbore?.diameter ?? 0, countersink?.diameter ?? 0) / 2;
      return round([at.origin[0], at.origin[1]], r, r);
    }),
  ];
};
