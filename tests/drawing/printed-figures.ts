import { type Dimension, type DrawingUnits, type SheetEntity, strokesOf } from '../../src/drawing/index.js';

/** A figure as a reader takes it off the paper; lengths in mm. */
export interface PrintedFigure {
  readonly value: number;
  /** The step it was printed to, mm or degrees. */
  readonly step: number;
}

/** Reads the figures of one dimension back: `2× R25`, `B1 10°`, `57.5 [2-1/4"]`. */
export function figuresOf(dimension: Dimension, units: DrawingUnits): readonly PrintedFigure[] {
  const text = strokesOf([dimension])
    .flatMap((stroke) => (stroke.kind === 'text' ? [stroke.text] : []))
    .join(' ');
  return readFigures(text, units);
}

export function readFigures(text: string, units: DrawingUnits): readonly PrintedFigure[] {
  const angle = /(\d+(?:\.\d+)?)°/.exec(text);
  if (angle) return [{ value: Number(angle[1]), step: 0.01 }];
  const figures: PrintedFigure[] = [];
  const plain = text.replace(/^\d+× /, '').replace(/[RØ[\]]/g, ' ');
  for (const word of plain.trim().split(/\s+/)) {
    const inch = /^(?:(\d+)(?:-|"$))?(?:(\d+)\/(\d+)")?$/.exec(word);
    if (/^\d+\.\d{3}"$/.test(word)) figures.push({ value: Number(word.slice(0, -1)) * 25.4, step: 0.0254 });
    else if (word.endsWith('"') && inch) {
      const inches = Number(inch[1] ?? 0) + Number(inch[2] ?? 0) / Number(inch[3] ?? 1);
      figures.push({ value: inches * 25.4, step: 25.4 / 32 });
    } else if (/^\d+(\.\d)?$/.test(word)) figures.push({ value: Number(word), step: 0.1 });
    else throw new Error(`${word} in '${text}' is no figure`);
  }
  if (figures.length !== (units === 'dual' ? 2 : 1))
    throw new Error(`'${text}' holds ${figures.length} figures`);
  return figures;
}

export const dimensionsOf = (entities: readonly SheetEntity[]): readonly Dimension[] =>
  entities.filter((entity) => entity.kind === 'dimension');

/** The dimensions that print something else than the model holds: a figure may be off by half its step, a part of a chain by one. */
export function contradictions(entities: readonly SheetEntity[], units: DrawingUnits): readonly string[] {
  return dimensionsOf(entities).flatMap((dimension) => {
    const chained = dimension.what.includes(' to ');
    const wrong = figuresOf(dimension, units).filter(
      ({ value, step }) => Math.abs(value - dimension.value) > step * (chained ? 1 : 0.5) + 1e-6,
    );
    return wrong.map(({ value }) => `${dimension.what}: prints ${value}, is ${dimension.value}`);
  });
}
