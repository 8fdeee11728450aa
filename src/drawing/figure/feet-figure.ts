import type { Vec2 } from '../../frame/index.js';
import { type Strength, tipsFirst } from '../../strength/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { arrowHead, disc, letters, path, type SheetEntity, SMALL, stroke } from '../sheet/index.js';

const MOST: Vec2 = [120, 90];

/** Room for words and arrows round the figure, mm. */
const ROUND = 14;

/** Seen from above, the person in front below: the line round the feet, the surfaces, the centre of mass, and where it tips first. */
export function feetFigure(strength: Strength): DrawnFigure {
  const { resting, surfaces } = strength.asked;
  const all = [...resting.feet, ...surfaces.flatMap(({ region }) => region.flat())];
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  const [minX, minY] = [Math.min(...xs), Math.min(...ys)];
  const [wide, deep] = [Math.max(...xs) - minX, Math.max(...ys) - minY];
  const factor = Math.min(MOST[0] / wide, MOST[1] / deep);
  const [width, height] = [wide * factor + 2 * ROUND, deep * factor + 2 * ROUND];
  const first = tipsFirst(strength);
  return {
    kind: 'drawn',
    said: 'The piece from above: the line round its feet, what is stood on, the centre of mass, and where it tips first.',
    width,
    height,
    draw: ([left, low]) => {
      const on = (x: number, y: number): Vec2 => [
        left + ROUND + (x - minX) * factor,
        low + ROUND + (y - minY) * factor,
      ];
      const centre = on(resting.centre[0], resting.centre[1]);
      const drawn: SheetEntity[] = [
        path(
          'frame',
          resting.feet.map(([x, y]) => on(x, y)),
          true,
        ),
        ...surfaces.flatMap(({ region }) =>
          region.map((loop) =>
            path(
              'visible',
              loop.map(([x, y]) => on(x, y)),
              true,
            ),
          ),
        ),
        stroke('centre', [centre[0] - 3, centre[1]], [centre[0] + 3, centre[1]]),
        stroke('centre', [centre[0], centre[1] - 3], [centre[0], centre[1] + 3]),
        letters(
          [left + ROUND, low + 2],
          'thick: the line round the feet; thin: what is stood on; cross: centre of mass',
        ),
      ];
      if (!first) return drawn;
      const at = on(first.at[0], first.at[1]);
      const tip: Vec2 = [at[0] + 9 * first.out[0], at[1] + 9 * first.out[1]];
      return [
        ...drawn,
        disc('visible', at, 1.4),
        stroke('visible', at, tip),
        arrowHead(tip, at, 3),
        letters([left + ROUND, low + height - SMALL - 1], 'ring and arrow: here it tips first'),
      ];
    },
  };
}
