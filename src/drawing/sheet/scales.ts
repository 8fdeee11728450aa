/** A scale: `name` as it stands in the title block, `factor` mm on paper for each mm of the thing. */
export interface Scale {
  readonly name: string;
  readonly factor: number;
}

const reduced = (by: number): Scale => ({ name: `1:${by}`, factor: 1 / by });

/**
 * Full size and reductions, largest first: ISO 5455 recommends 1:1, 1:2, 1:5, 1:10, 1:20, 1:50 and lets intermediate ones be
 * taken where none of these will do (here 1:2.5, 1:3 and 1:4, so that a board fills a small sheet).
 */
export const SCALES: readonly Scale[] = [1, 2, 2.5, 3, 4, 5, 10, 20, 50].map(reduced);
