import type { Vec2 } from '../../frame/index.js';
import type { LineKind } from './line-kinds.js';
import type {
  CircleStroke,
  LineStroke,
  PolylineStroke,
  SheetEntity,
  Tag,
  TextHeight,
  TextStroke,
} from './sheet.js';

/** Letters of dimensions, tables and notes, mm: the smallest of ISO 3098-1. */
export const SMALL = 2.5;

/** Letters of running text and tables, mm: 8.5 points. */
export const BODY = 2.2;

export const stroke = (line: LineKind, from: Vec2, to: Vec2): LineStroke => ({
  kind: 'line',
  line,
  from,
  to,
});

export const path = (line: LineKind, points: readonly Vec2[], closed = false): PolylineStroke => ({
  kind: 'polyline',
  line,
  points,
  closed,
});

export const disc = (line: LineKind, centre: Vec2, radius: number): CircleStroke => ({
  kind: 'circle',
  line,
  centre,
  radius,
});

interface Lettering {
  readonly tag?: Tag;
  readonly height?: TextHeight;
  readonly anchor?: TextStroke['anchor'];
  readonly rotationDeg?: number;
  readonly bold?: boolean;
}

export const letters = (at: Vec2, text: string, look: Lettering = {}): TextStroke => ({
  kind: 'text',
  at,
  text,
  height: SMALL,
  anchor: 'start',
  rotationDeg: 0,
  ...look,
});

/** Entities with a tag, those that have one of their own left alone. */
export const tagged = (entities: readonly SheetEntity[], tag: Tag): readonly SheetEntity[] =>
  entities.map((entity) => (entity.tag ? entity : { ...entity, tag }));

/** A filled arrow head with its tip at a point. */
export function arrowHead(tip: Vec2, from: Vec2, size = 2.2): PolylineStroke {
  const run = Math.hypot(tip[0] - from[0], tip[1] - from[1]) || 1;
  const [x, y] = [(tip[0] - from[0]) / run, (tip[1] - from[1]) / run];
  const half = size * 0.16;
  const at = (along: number, aside: number): Vec2 => [
    tip[0] - x * along - y * aside,
    tip[1] - y * along + x * aside,
  ];
  return { ...path('dimension', [tip, at(size, half), at(size, -half)], true), fill: 'ink' };
}
