import type { Vec2 } from '../../frame/index.js';
import type { Solids } from '../../solid/index.js';
import { type DrawingOptions, laidOutWhole, type Scalable, scalable } from '../board/index.js';
import { chainRow, rowBeside, type Side } from '../dimension/index.js';
import { entitiesBox, letters, type SheetEntity } from '../sheet/index.js';
import { VIEW_FRAMES, type View, type ViewName, viewBox, viewLines, viewOf } from '../view/index.js';
import { seenParts } from './picture.js';

const GAP = 10;

/** The design put together: front, side and top with hidden joints dashed, and its overall size. */
export function assemblyFigure(solids: Solids, options: DrawingOptions): Scalable {
  const third = options.projection === 'third-angle';
  const parts = seenParts(solids);
  const seen = (name: ViewName) => viewOf(parts, VIEW_FRAMES[name], { hidden: true });
  // in first angle the view from the left stands on the right, and the view from above below
  const sideName = third ? 'right' : 'left';
  const views = [seen('front'), seen(sideName), seen('top')] as const;
  return scalable(
    'The piece put together, from the front, the side and above, with its sizes.',
    ({ factor }) => laidOutWhole(laidOut(views, sideName, factor, [0, 0], options)),
  );
}

function laidOut(
  [front, side, top]: readonly [View, View, View],
  sideName: ViewName,
  factor: number,
  at: Vec2,
  options: DrawingOptions,
): readonly SheetEntity[] {
  const third = options.projection === 'third-angle';
  const frontPart = withSize(front, 'front', factor, at, { below: 'width', left: 'height' }, options);
  const box = entitiesBox(frontPart);
  const loose = (view: View, name: ViewName, sizes: Partial<Record<Side, string>>, place: Vec2) =>
    withSize(view, name, factor, place, sizes, options);
  const besideAt = entitiesBox(loose(side, sideName, { below: 'depth' }, at));
  const besidePart = loose(side, sideName, { below: 'depth' }, [
    at[0] + box.maxX + GAP - besideAt.minX,
    at[1],
  ]);
  const topAt = entitiesBox(loose(top, 'top', { left: 'depth' }, at));
  const shift = third ? box.maxY + GAP - topAt.minY : box.minY - GAP - topAt.maxY;
  return [...frontPart, ...besidePart, ...loose(top, 'top', { left: 'depth' }, [at[0], at[1] + shift])];
}

/** A view with its overall sizes and its name. */
function withSize(
  view: View,
  name: string,
  factor: number,
  at: Vec2,
  sizes: Partial<Record<Side, string>>,
  { units }: DrawingOptions,
): readonly SheetEntity[] {
  const lines = viewLines(view, { at, factor });
  const real = viewBox(view);
  const box = entitiesBox(lines);
  const rows = Object.entries(sizes).flatMap(([side, what]) => {
    const place = rowBeside(box, side as Side);
    const upright = side === 'left' || side === 'right';
    const [from, to] = upright ? [box.minY, box.maxY] : [box.minX, box.maxX];
    const size = upright ? real.maxY - real.minY : real.maxX - real.minX;
    return chainRow(
      place,
      6,
      [
        { value: 0, what: `overall ${what}`, point: place.at(from, 0) },
        { value: size, what: 'its end', point: place.at(to, 0) },
      ],
      units,
    ).dimensions;
  });
  return [
    ...lines,
    ...rows,
    letters([(box.minX + box.maxX) / 2, box.maxY + 2.5], name, { anchor: 'middle', bold: true }),
  ];
}
