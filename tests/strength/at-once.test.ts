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

/** The same piece with tenons so much narrower and thinner: narrow ones are racked loose, thin ones sheared off. */
const slight = (design: Design, width: number, thickness: number): Design => ({
  ...design,
  joints: design.joints.map((joint) => ({
    ...joint,
    tenons: joint.tenons.map((tenon) => ({
      ...tenon,
      width: tenon.width * width,
      thickness: tenon.thickness * thickness,
    })),
  })),
});

/** Finer than the loads on a surface differ, so that one of them comes between the heaviest and the next. */
const SHARES = [1, 0.5, 0.3, 0.16, 0.12, 0.1, 0.08, 0.065, 0.05];

test(`for all designs and however slight their tenons, what is refused at once is what is refused in full (seed ${SEED})`, () => {
  const alone = new Set<string>();
  const designs = [...sampledDesigns(many(8, 100), SEED)].flatMap(({ design }) => (design ? [design] : []));
  for (const design of [stool.build(readParameters(stool, {}, 'mm')), ...designs])
    for (const share of SHARES)
      for (const one of [slight(design, share, 1), slight(design, 1, share)]) {
        const full = refused(one, false);
        expect(refused(one, true)).toEqual(full);
        const codes = new Set(full?.map(({ code }) => code));
        if (codes.size === 1) for (const code of codes) alone.add(code);
      }
  // each is what refuses a piece somewhere, with nothing else to point at it
  expect([...alone]).toEqual(expect.arrayContaining(['tenons-sheared', 'joint-racked']));
});
