import { dot, type Frame, type Vec2, type Vec3 } from '../../frame/index.js';
import { boundsOf } from '../../profile/index.js';
import type { Box, SheetEntity } from '../sheet/index.js';
import { toneOnSheet } from './tones.js';
import type { View } from './view.js';

/** A view's place on the sheet: where the origin of its frame comes to lie, and mm of paper for each mm. */
export interface ViewPlace {
  readonly frame: Frame;
  readonly at: Vec2;
  readonly factor: number;
}

/** A point in space on the sheet. */
export const onSheet = ({ frame, at, factor }: ViewPlace, p: Vec3): Vec2 => [
  at[0] + factor * (dot(p, frame.x) - dot(frame.origin, frame.x)),
  at[1] + factor * (dot(p, frame.y) - dot(frame.origin, frame.y)),
];

/** A point of a view's plane on the sheet. */
export const viewPoint = ({ at, factor }: Pick<ViewPlace, 'at' | 'factor'>, [x, y]: Vec2): Vec2 => [
  at[0] + factor * x,
  at[1] + factor * y,
];

/** The tones and lines of a view on the sheet. */
export const viewLines = (view: View, place: Pick<ViewPlace, 'at' | 'factor'>): readonly SheetEntity[] => [
  ...view.tones.map((tone) => toneOnSheet(tone, (p) => viewPoint(place, p))),
  ...view.lines.map(
    ({ line, part, points }): SheetEntity => ({
      kind: 'polyline',
      line,
      part,
      closed: false,
      points: points.map((p) => viewPoint(place, p)),
    }),
  ),
];

/** The box round a view's lines and shadow, mm at full size. */
export function viewBox(view: View): Box {
  const points = [
    ...view.lines.flatMap((line) => line.points),
    ...view.tones.flatMap(({ loops }) => loops.flat()),
  ];
  return boundsOf(points);
}
