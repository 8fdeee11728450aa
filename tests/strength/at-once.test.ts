import { expect, test } from 'vitest';
import stool from '../../models/stool.js';
import type { Design } from '../../src/assembly/index.js';
import { readParameters } from '../../src/model/index.js';
import { USUAL_SEASON } from '../../src/movement/index.js';
import { passed, quickResting, stockIn, strengthOf } from '../../src/strength/index.js';
import { sampledDesigns } from '../properties/sampled-designs.js';
import { many, SEED } from '../properties/seed.js';

const TOLD = { season: USUAL_SEASON, stock: stockIn(USUAL_SEASON) };

/** What may refuse a piece: every figure past its worst limit, by what it is of. */
const refused = (design: Design, atOnce: boolean) =>
  strengthOf(design, () => quickResting(design), TOLD, atOnce)
    ?.margins.filter((margin) => passed(margin)?.level === 'error')
    .map(({ code, what, figure }) => ({ code, what, figure }));

/** The same piece, its tenons as thin and narrow as a match: what stands on it shears them off. */
const slight = (design: Design, share: number): Design => ({
  ...design,
  joints: design.joints.map((joint) => ({
    ...joint,
    tenons: joint.tenons.map((tenon) => ({
      ...tenon,
      thickness: tenon.thickness * share,
      width: tenon.width * share,
    })),
  })),
});

test(`for all designs and however slight their tenons, what is refused at once is what is refused in full (seed ${SEED})`, () => {
  const codes = new Set<string>();
  const designs = [...sampledDesigns(many(12, 100), SEED)].flatMap(({ design }) => (design ? [design] : []));
  for (const design of [stool.build(readParameters(stool, {}, 'mm')), ...designs])
    for (const share of [1, 0.5, 0.35, 0.25, 0.15]) {
      const one = slight(design, share);
      const full = refused(one, false);
      expect(refused(one, true)).toEqual(full);
      for (const { code } of full ?? []) codes.add(code);
    }
  expect([...codes]).toEqual(expect.arrayContaining(['tenons-sheared', 'joint-racked']));
});
