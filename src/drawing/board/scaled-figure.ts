import { once, onceForEach } from '../../once.js';
import type { DrawnFigure } from '../flow/index.js';
import {
  type Box,
  entitiesBox,
  movedEntities,
  SCALES,
  type Scale,
  type SheetEntity,
} from '../sheet/index.js';

/** A drawing at one of the usual scales. */
export interface ScaledFigure extends DrawnFigure {
  readonly scale: Scale;
}

/** A drawing as large as a room lets it be, mm on the sheet; undefined when it fits at no scale. */
export type Scalable = (room: {
  readonly width: number;
  readonly height: number;
}) => ScaledFigure | undefined;

/** A drawing laid out at a scale, wherever it stands. */
export interface Layout {
  /** The room it takes at least, known before all is drawn. */
  readonly least: Box;
  readonly whole: () => readonly SheetEntity[];
}

/** A layout of which everything is drawn at once. */
export const laidOutWhole = (entities: readonly SheetEntity[]): Layout => ({
  least: entitiesBox(entities),
  whole: () => entities,
});

/** A drawing that takes the largest of the usual scales at which it fits; laid out once at each, for however many rooms. `said`: a sentence in its place. */
export function scalable(said: string, layoutAt: (scale: Scale) => Layout): Scalable {
  const layout = onceForEach((scale: Scale) => {
    const { least, whole } = layoutAt(scale);
    return { least, figure: once(() => figureOf(scale, whole(), said)) };
  });
  return (room) => {
    const fits = ([width, height]: readonly [number, number]) => width <= room.width && height <= room.height;
    for (const scale of SCALES) {
      const { least, figure } = layout(scale);
      if (fits(sizeOf(least)) && fits([figure().width, figure().height])) return figure();
    }
    return undefined;
  };
}

const sizeOf = ({ minX, maxX, minY, maxY }: Box) => [maxX - minX, maxY - minY] as const;

function figureOf(scale: Scale, drawn: readonly SheetEntity[], said: string): ScaledFigure {
  const box = entitiesBox(drawn);
  const [width, height] = sizeOf(box);
  return {
    kind: 'drawn',
    said: `${said} Scale ${scale.name}.`,
    scale,
    width,
    height,
    draw: ([x, y]) => movedEntities(drawn, [x - box.minX, y - box.minY]),
  };
}
