import { expect, test } from 'vitest';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { builtInShop } from '../../src/shop/index.js';
import { latestVerdict, type Question, verdictOf } from '../../src/verdict/index.js';

const question: Question = {
  model: stool as unknown as Model,
  shop: builtInShop('mm'),
  jig: jig.build(readParameters(jig, {}, 'mm')),
  units: 'mm',
};
const values = (raw: Readonly<Record<string, number>>) => readParameters(stool, raw, 'mm');

test('while a person drags a slider only the last stop is judged to the end, and as if nothing had been before', async () => {
  let breaths = 0;
  const ask = latestVerdict(question, () => {
    breaths += 1;
    return new Promise((resolve) => setTimeout(resolve, 0));
  });
  const first = ask(values({ rake: 5 }));
  // some steps of the first are done when the next is asked
  while (breaths < 4) await new Promise((resolve) => setTimeout(resolve, 0));
  const second = ask(values({ rake: 6 }));
  const last = ask(values({ rake: 20, sideThickness: 18 }));
  expect(await first).toBeUndefined();
  expect(await second).toBeUndefined();
  expect(await last).toEqual(await verdictOf(question, values({ rake: 20, sideThickness: 18 })));
  expect((await last)!.findings.length).toBeGreaterThan(0);
  // and it can be asked again when all is quiet
  expect(await ask(values({}))).toEqual(await verdictOf(question, values({})));
});

test('sizes that cannot be built are refused in the answer', async () => {
  const ask = latestVerdict(question, () => Promise.resolve());
  const answer = await ask(values({ height: 230, stretcherHeight: 200 }));
  expect(answer!.refused).toBeDefined();
  expect(answer!.findings).toEqual([]);
});
