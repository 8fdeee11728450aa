import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import type { Vec2 } from '../frame/index.js';
import type { Measured } from './hole-measurements.js';
import { distance } from './hole-plane.js';

/** Named points, mm. */
export type Points = Map<string, Vec2>;

/** The names of three points. */
export type Triangle = readonly [a: string, b: string, c: string];

/** Steps of the fit; from a trilaterated start it settles in fewer than ten. */
const STEPS = 60;

/** Levenberg–Marquardt on the distances; the start's first point stays, and its second stays on X. */
export function leastSquares(
  measured: readonly Measured[],
  start: Points,
  [first, second]: Triangle,
): Points {
  const free = [...start.keys()].filter((name) => name !== first && name !== second);
  const column = new Map(free.map((name, i) => [name, 1 + 2 * i]));
  const at = (params: readonly number[], name: string): Vec2 => {
    const i = column.get(name);
    return i === undefined ? [name === second ? params[0]! : 0, 0] : [params[i]!, params[i + 1]!];
  };
  const { parameterValues } = levenbergMarquardt(
    { x: measured.map((_, i) => i), y: measured.map((each) => each.distance) },
    (params) => (i) => distance(at(params, measured[i]!.from), at(params, measured[i]!.to)),
    {
      initialValues: [start.get(second)![0], ...free.flatMap((name) => [...start.get(name)!])],
      maxIterations: STEPS,
      errorTolerance: 1e-18,
      jacobianFunction: (params) => (i) => {
        const { from, to } = measured[i]!;
        const [p, q] = [at(params, from), at(params, to)];
        const size = distance(p, q);
        const slopes: number[] = params.map(() => 0);
        for (const [name, sign] of [
          [from, 1],
          [to, -1],
        ] as const) {
          const k = name === second ? 0 : column.get(name);
          if (k === undefined) continue;
          slopes[k] = (sign * (p[0] - q[0])) / size;
          if (name !== second) slopes[k + 1] = (sign * (p[1] - q[1])) / size;
        }
        return slopes;
      },
    },
  );
  return new Map([...start.keys()].map((name) => [name, at(parameterValues, name)]));
}
