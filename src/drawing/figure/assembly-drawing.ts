import type { Vec2 } from '../../frame/index.js';
import type { Solids } from '../../solid/index.js';
import { type DrawingOptions, drawableOf } from '../board/index.js';
import { chainRow, rowBeside, type Side } from '../dimension/index.js';
import { type Draft, entitiesBox, letters, pageOf, SCALES, type SheetEntity } from '../sheet/index.js';
import { VIEW_FRAMES, type View, type ViewName, viewBox, viewLines, viewOf } from '../view/index.js';
import { seenParts } from './picture.js';

const GAP = 10;

/** The design put together: front, side and top with hidden joints dashed, and its overall size. */
export function assemblyDrawing(solids: Solids, options: DrawingOptions): Draft {
  const third = options.projection === 'third-angle';
  const parts = seenParts(solids);
  const seen = (name: ViewName) => viewOf(parts, VIEW_FRAMES[name], { hidden: true });
  // in first angle the view from the left stands on the right, and the view from above below
  const sideName = third ? 'right' : 'left';
  const [front, side, top] = [seen('front'), seen(sideName), seen('top')];
  for (const { name, factor } of SCALES) {
    for (const orientation of ['landscape', 'portrait'] as const) {
      const page = pageOf(options.paper, orientation);
      const area = drawableOf(page);
      const draw = (at: Vec2) => laidOut([front, side, top], sideName, factor, at, options);
      const box = entitiesBox(draw([0, 0]));
      const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
      if (width > area.maxX - area.minX || height > area.maxY - area.minY) continue;
      const at: Vec2 = [
        (area.minX + area.maxX - box.minX - box.maxX) / 2,
        (area.minY + area.maxY - box.minY - box.maxY) / 2,
      ];
      return {
        id: 'assembly',
        title: 'assembly',
        page,
        documentType: 'assembly',
        scale: name,
        entities: draw(at),
        cautions: [],
      };
    }
  }
  throw new RangeError(`${solids.design.name} fits no sheet at the smallest scale`);
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
