import type { Vec2 } from '../../frame/index.js';
import type { SetupCard, ShopPapers } from '../../shop/index.js';
import type { Solids } from '../../solid/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { letters, SMALL, spread, stroke, textWidth } from '../sheet/index.js';
import { lookingFrom, sceneOf, viewBox, viewIn, viewLines, viewPoint, visibleSpots } from '../view/index.js';
import { setUpParts } from './set-up-parts.js';

/** From the end of the mortise, you on the left and above: the cut surfaces look at the viewer. */
const FROM = lookingFrom([1, -0.62, 0.5]);

/** Between the picture and the words beside it, and from word to word, mm on the sheet. */
const [GAP, APART] = [2, 3.6];

/**
 * The set-up that has most to show, cut away at the middle of its mortise and seen from there with the cutter down: work, rails or guide,
 * wedge, plate, router, stop, each with its name.
 *
 * @param room mm on the sheet
 * @returns undefined when no card is cut with rails or a guide board
 */
export function jigInUse(
  solids: Solids,
  papers: ShopPapers,
  room: { readonly width: number; readonly height: number },
): DrawnFigure | undefined {
  const most = shownCard(papers.cards);
  const shown = most && setUpParts(solids, papers, most);
  if (!shown) return undefined;
  const { parts, names } = shown;
  const scene = sceneOf(parts, FROM);
  const view = viewIn(scene, { hidden: false, toned: 'apart' });
  const spots = visibleSpots(scene, view);
  const box = viewBox(view);
  const words = Math.max(...[...names.values()].map((one) => textWidth(one, SMALL))) + GAP;
  const factor = Math.min(
    (room.width - 2 * words) / (box.maxX - box.minX),
    room.height / (box.maxY - box.minY),
  );
  const [wide, high] = [factor * (box.maxX - box.minX), factor * (box.maxY - box.minY)];
  return {
    kind: 'drawn',
    said: `Card ${most.id} in use, cut away at the middle of the mortise, the cutter down; you stand on the left. Named: ${[...new Set(names.values())].join(', ')}.`,
    width: wide + 2 * words,
    height: high,
    draw: ([x, y]) => {
      const on = { at: [x + words - factor * box.minX, y - factor * box.minY] as Vec2, factor };
      const named = [...names].flatMap(([id, name]) => {
        const spot = spots.get(id);
        return spot ? [{ words: name, spot: viewPoint(on, spot) }] : [];
      });
      const middle = x + words + wide / 2;
      return [
        ...viewLines(view, on),
        ...column(
          named.filter(({ spot }) => spot[0] < middle),
          x + words - GAP,
          'end',
          y,
        ),
        ...column(
          named.filter(({ spot }) => spot[0] >= middle),
          x + words + wide + GAP,
          'start',
          y,
        ),
      ];
    },
  };
}

/** Both rails with a wedge before both rails, before one, before a guide board: whatever shows most. */
function shownCard(cards: readonly SetupCard[]): SetupCard | undefined {
  const parts = ({ nearRail, farRail, guideOffset }: SetupCard) =>
    [nearRail, farRail, nearRail?.wedge, farRail?.wedge].filter((one) => one !== undefined).length * 2 +
    (guideOffset === undefined ? 0 : 1);
  return cards.filter((card) => parts(card) > 0).toSorted((a, b) => parts(b) - parts(a))[0];
}

/** Words one below the other beside a picture, each led to its part. */
function column(
  named: readonly { readonly words: string; readonly spot: Vec2 }[],
  x: number,
  anchor: 'start' | 'end',
  low: number,
) {
  const ordered = named.toSorted((a, b) => a.spot[1] - b.spot[1]);
  const levels = spread(
    ordered.map(({ spot }) => spot[1]),
    APART,
  );
  const lift = Math.max(0, low + SMALL / 2 - (levels[0] ?? low + SMALL));
  return ordered.flatMap(({ words, spot }, i) => {
    const y = levels[i]! + lift;
    return [
      letters([x, y - SMALL / 2], words, { anchor }),
      stroke('dimension', [x + (anchor === 'end' ? 0.6 : -0.6), y], spot),
    ];
  });
}
