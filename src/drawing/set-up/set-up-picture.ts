import type { Vec2, Vec3 } from '../../frame/index.js';
import type { SetupCard, ShopPapers } from '../../shop/index.js';
import type { Solids } from '../../solid/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { letters, SMALL, spread, stroke, textWidth } from '../sheet/index.js';
import { lookingFrom, sceneOf, viewBox, viewIn, viewLines, viewPoint, visibleSpots } from '../view/index.js';
import { setUpParts } from './set-up-parts.js';

/** From the end of the mortise, you on the left and above: the cut surfaces look at the viewer. */
const FROM = lookingFrom([1, -0.62, 0.5]);

/** Between the picture and the words beside it, and from word to word, mm on the sheet. */
const [GAP, APART] = [2, 3.3];

/** A little before the surface they lie on, so that it does not hide them, mm. */
const BEFORE = 0.2;

/** What will be cut, on the cut surface. */
function mortiseLines({ cutter, depth }: SetupCard) {
  const corners: readonly Vec3[] = [
    [BEFORE, -cutter / 2, 0],
    [BEFORE, -cutter / 2, -depth],
    [BEFORE, cutter / 2, -depth],
    [BEFORE, cutter / 2, 0],
  ];
  return corners.slice(1).map((to, i) => ({ id: 'mortise', from: corners[i]!, to }));
}

/**
 * A set-up as depth is zeroed, cut away at the middle of the mortise and seen from there: work, rails or guide, wedge, plate, router, depth
 * block, stop, each with its name.
 *
 * @param room mm on the sheet
 * @returns undefined when none of the card's cuts is held
 */
export function setUpPicture(
  solids: Pick<Solids, 'kernel' | 'design'>,
  papers: Pick<ShopPapers, 'holdings' | 'aids'>,
  card: SetupCard,
  room: { readonly width: number; readonly height: number },
): DrawnFigure | undefined {
  const shown = setUpParts(solids, papers, card);
  if (!shown) return undefined;
  const scene = sceneOf(shown.parts, FROM);
  const view = viewIn(scene, { hidden: false, toned: 'apart', wires: mortiseLines(card) });
  const spots = visibleSpots(scene, view);
  const named = [...shown.names].flatMap(([id, words]) => {
    const spot = spots.get(id);
    return spot ? [{ words, spot }] : [];
  });
  const box = viewBox(view);
  // as many words on the left as on the right
  const fromLeft = named.toSorted((a, b) => a.spot[0] - b.spot[0]);
  const half = Math.floor(named.length / 2);
  const sides = [fromLeft.slice(0, half), fromLeft.slice(half)] as const;
  const [before, after] = sides.map(
    (side) => Math.max(0, ...side.map((one) => textWidth(one.words, SMALL))) + GAP,
  );
  const factor = Math.min(
    (room.width - before! - after!) / (box.maxX - box.minX),
    room.height / (box.maxY - box.minY),
  );
  const [wide, high] = [factor * (box.maxX - box.minX), factor * (box.maxY - box.minY)];
  const height = Math.max(high, half * APART);
  return {
    kind: 'drawn',
    said: `Card ${card.id} set up, as depth is zeroed: cut away at the middle of the mortise, which is drawn in chain lines; you stand on the left. Named: ${named.map((one) => one.words).join(', ')}.`,
    width: wide + before! + after!,
    height,
    draw: ([x, y]) => {
      const on = {
        at: [x + before! - factor * box.minX, y + (height - high) / 2 - factor * box.minY] as Vec2,
        factor,
      };
      const [left, right] = sides.map((side) =>
        side.map((one) => ({ words: one.words, spot: viewPoint(on, one.spot) })),
      );
      return [
        ...viewLines(view, on),
        ...column(left!, x + before! - GAP, 'end', y, y + height),
        ...column(right!, x + before! + wide + GAP, 'start', y, y + height),
      ];
    },
  };
}

/** Words one below the other beside a picture, each led to its part. */
function column(
  named: readonly { readonly words: string; readonly spot: Vec2 }[],
  x: number,
  anchor: 'start' | 'end',
  low: number,
  high: number,
) {
  const ordered = named.toSorted((a, b) => a.spot[1] - b.spot[1]);
  const levels = spread(
    ordered.map(({ spot }) => spot[1]),
    APART,
  );
  const lift = Math.max(0, low + SMALL / 2 - (levels[0] ?? low + SMALL));
  const drop = Math.min(0, high - SMALL / 2 - (levels.at(-1) ?? high - SMALL) - lift);
  return ordered.flatMap(({ words, spot }, i) => {
    const y = levels[i]! + lift + drop;
    return [
      letters([x, y - SMALL / 2], words, { anchor }),
      stroke('dimension', [x + (anchor === 'end' ? 0.6 : -0.6), y], spot),
    ];
  });
}
