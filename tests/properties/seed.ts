/** The seed of every property test: fixed, so that a run can be repeated; `TENONWRIGHT_SEED` chooses another. */
export const SEED = Number(process.env.TENONWRIGHT_SEED ?? 20_240_611);

/** Parameters of fast-check; a failing property prints the seed and the smallest case itself. */
export const seed = (numRuns = 100): { readonly seed: number; readonly numRuns: number } => ({
  seed: SEED,
  numRuns,
});

/** Whether everything is tried, as in CI; somebody who has just cloned is spared what is like something else that is tried. */
export const MANY = process.env.TENONWRIGHT_MANY === '1';

/**
 * How many random cases a costly property is tried on: few for somebody who has just cloned, all of them with
 * `TENONWRIGHT_MANY=1`, as in CI. A property is never left out.
 */
export const many = (few: number, all: number): number => (MANY ? all : few);
