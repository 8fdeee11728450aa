import { add, angleDeg, dot, length, scale, unit, type Vec3 } from '../../frame/index.js';
import { PARALLEL_DEG, SAME_POINT } from '../../tolerances.js';
import type { Entry } from './entry.js';
import { freedomOf } from './glue-up-entry.js';

/** Whether two directions are one; most are so far apart that no angle need be worked out. */
export const oneWay = (a: Vec3, b: Vec3): boolean => dot(a, b) > 1 / 2 && angleDeg(a, b) < PARALLEL_DEG;

/** Directions, each once. */
export function distinct(directions: readonly Vec3[]): readonly Vec3[] {
  const found: Vec3[] = [];
  for (const one of directions) if (!found.some((other) => oneWay(one, other))) found.push(one);
  return found;
}

/**
 * The directions along which boards can be brought together: both ways along the axis of every joint, and between axes that
 * nearly agree, where clearance or a spring lets both joints in.
 *
 * Between axes are the means of two, of three (convex regions of a plane that meet three by three have a point in common:
 * Helly 1923) and of all that are near one.
 *
 * @returns units; with each direction also the one against it
 */
export function moveDirections(entries: readonly Entry[]): readonly Vec3[] {
  const axes = distinct(entries.flatMap(({ axis }) => [axis, scale(axis, -1)]));
  const along = axes.map((axis) => {
    return entries.filter((entry) => oneWay(entry.axis, axis) || oneWay(scale(entry.axis, -1), axis));
  });
  /** Whether some joint of the axis goes in along a direction near it. */
  const enters = (i: number, direction: Vec3): boolean =>
    along[i]!.some((entry) => {
      const forward = oneWay(entry.axis, axes[i]!) ? direction : scale(direction, -1);
      return freedomOf(entry, forward).freedom !== 'locked';
    });
  const meanOf = (which: readonly number[]): Vec3[] => {
    const sum = which.reduce<Vec3>((total, i) => add(total, axes[i]!), [0, 0, 0]);
    if (length(sum) < SAME_POINT) return [];
    const mean = unit(sum);
    return which.every((i) => enters(i, mean)) ? [mean] : [];
  };
  const means: Vec3[] = [];
  const pairs = axes.map((_, i) => axes.map((_other, k) => (k > i ? meanOf([i, k]) : [])));
  const pair = (i: number, k: number) => pairs[Math.min(i, k)]![Math.max(i, k)]!;
  const near = axes.map((_, i) => axes.flatMap((_other, k) => (pair(i, k).length > 0 ? [k] : [])));
  near.forEach((others, i) => {
    for (const k of others) {
      if (k < i) continue;
      means.push(...pair(i, k));
      for (const m of others) if (m > k && near[k]!.includes(m)) means.push(...meanOf([i, k, m]));
    }
    if (others.length > 3) means.push(...meanOf([i, ...others]));
  });
  return distinct([...axes, ...means]);
}
