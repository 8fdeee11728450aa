import { dot, subtract } from '../../frame/index.js';
import { printLength } from '../../length/index.js';
import type { Spot } from '../piece/index.js';
import type { PreviewData } from '../told/index.js';

/** `corner of tread`. */
export const nameOfSpot = ({ pieces }: PreviewData, { on, piece }: Spot): string =>
  `${on} of ${pieces.find(({ id }) => id === piece)?.name ?? piece}`;

/** The straight way between two spots, with everything put together. */
export function distance({ units }: Pick<PreviewData, 'units'>, [from, to]: readonly [Spot, Spot]): string {
  return printLength(Math.hypot(...subtract(to.at, from.at)), { units });
}

/** The way between two spots in words: straight, its three parts, and how far one lies square off the other's face. */
export function measuredWords(data: PreviewData, [from, to]: readonly [Spot, Spot]): string {
  const told = (mm: number): string => printLength(Math.abs(mm), { units: data.units });
  const way = subtract(to.at, from.at);
  const parts = data.box.sides.map(({ name }, i) => `${name} ${told(way[i]!)}`).join(', ');
  const normal = to.normal ?? from.normal;
  const square = normal ? `; square to the face ${told(dot(way, normal))}` : '';
  return `${nameOfSpot(data, from)} to ${nameOfSpot(data, to)}: ${distance(data, [from, to])} (${parts})${square}`;
}
