import {
  checkBar,
  type Dimension,
  letters,
  movedEntities,
  type PrintScale,
  printScaleWords,
  rule,
  type Sheet,
  type SheetEntity,
  type SheetSet,
  SMALL,
} from '../sheet/index.js';
import type { TemplateArtwork } from './template-artwork.js';
import { keyFigure } from './template-keys.js';

/** Round the template, and below it for words and a rule, mm. */
const MARGIN = 8;
const FOOT = 16;

/** A rule of 100 mm is longer than a small part: no sheet is narrower, mm. */
const NARROWEST = 200;

/** A template whole at full size on a sheet of its own size: for a plotter, or a program that cuts. */
export function plotterSheet(artwork: TemplateArtwork, set: SheetSet, printScale?: PrintScale): Sheet {
  const { box, board, keys } = artwork;
  const width = Math.max(NARROWEST, Math.ceil(box.maxX - box.minX + 2 * MARGIN));
  const height = Math.max(130, Math.ceil(box.maxY - box.minY + 2 * MARGIN + FOOT));
  const figures = keys.map((key): Dimension => {
    const middle = [(key.from[0] + key.to[0]) / 2, (key.from[1] + key.to[1]) / 2] as const;
    const text = `${keyFigure(key, set.units)} ${key.what}`;
    const words =
      key.axis === 'x'
        ? letters([middle[0], middle[1] - 1 - SMALL], text, { anchor: 'middle' })
        : letters([middle[0] - 1, middle[1]], text, { anchor: 'middle', rotationDeg: 90 });
    return { kind: 'dimension', what: key.what, value: key.value, unit: 'mm', parts: [words] };
  });
  const bar = checkBar(set.units);
  const entities: readonly SheetEntity[] = [
    ...movedEntities([...artwork.strokes, ...figures], [MARGIN - box.minX, MARGIN + FOOT - box.minY]),
    ...rule([MARGIN, MARGIN], bar.length, 'x', `${bar.words}: measure before use`),
    ...rule([2, MARGIN + 6], bar.length, 'y', bar.words),
    letters([MARGIN, MARGIN + 9], `${board.name}: template, full size`, { bold: true }),
    letters(
      [MARGIN, MARGIN + 5],
      `${set.design}, rev. ${set.revision}${printScale ? `, corrected for ${printScaleWords(printScale)}` : ''}`,
    ),
    ...(set.stamp === undefined ? [] : [letters([MARGIN, height - 9], set.stamp, { height: 5, bold: true })]),
  ];
  return {
    id: `template-${board.id}`,
    title: `${set.design}: template ${board.name}`,
    width,
    height,
    scale: '1:1',
    entities,
  };
}
