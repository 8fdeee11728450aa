import { rounded } from './rounded.js';

/**
 * Plain data with every figure in it freed of the last digits of its arithmetic: whatever is worked out from it without sines and
 * the like is the same to the last bit on every engine. Directions to 1e-13, all else to 1e-10. What was one object stays one.
 */
export const settledFigures = <T>(data: T): T => settledData(data, new Map()) as T;

function settledData(data: unknown, done: Map<object, unknown>): unknown {
  if (typeof data === 'number') return rounded(data, 1e10);
  if (typeof data !== 'object' || data === null) return data;
  const found = done.get(data);
  if (found !== undefined) return found;
  const settle = (one: unknown): unknown => settledData(one, done);
  const made = isDirection(data)
    ? data.map((part) => rounded(part, 1e13))
    : Array.isArray(data)
      ? data.map(settle)
      : Object.fromEntries(Object.entries(data).map(([name, one]) => [name, settle(one)]));
  done.set(data, made);
  return made;
}

/** Far above rounding, far below what a length could come to by chance. */
const UNIT = 1e-9;

function isDirection(data: object): data is number[] {
  if (!Array.isArray(data) || data.length !== 3) return false;
  const [x, y, z]: unknown[] = data;
  if (typeof x !== 'number' || typeof y !== 'number' || typeof z !== 'number') return false;
  return Math.abs(x * x + y * y + z * z - 1) < UNIT;
}
