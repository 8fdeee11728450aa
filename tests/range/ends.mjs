// Whether the ends that `range` tells are ends: fresh random designs, one dimension of each, and full verdicts half a step inside and
// half a step beyond every end, where the search has not been. After `npm run build`:
//   node tests/range/ends.mjs [--ends 500] [--seed 1] [--minutes 60] [--only stool,frame,jig]
// The count so far is told every ten ends, with the memory in use; a wrong end is told with its design.
import path from 'node:path';
import { parseArgs } from 'node:util';
import { fractions } from '../fractions.mjs';

const root = path.resolve(import.meta.dirname, '../..');
const of = (folder) => import(`${root}/dist/src/${folder}/index.js`);
const { parameterMeta, readParameters } = await of('model');
const { builtInShop, jigOfShop } = await of('shop');
const { loadModel, OWN_MODELS } = await of('node');
const { knobs } = await of('verdict');
const { dimensionOf, glanceOf, judgeOf, rangesOf } = await of('range');

const { values: options } = parseArgs({
  options: {
    ends: { type: 'string', default: '500' },
    seed: { type: 'string', default: '1' },
    minutes: { type: 'string', default: '600' },
    only: { type: 'string', default: 'stool,frame,jig' },
  },
});
const until = Date.now() + 60_000 * Number(options.minutes);
const shop = builtInShop('mm');
const jig = jigOfShop(shop, await loadModel('jig', OWN_MODELS), 'mm');
const models = await Promise.all(options.only.split(',').map((name) => loadModel(name, OWN_MODELS)));
const draw = fractions(Number(options.seed));
const pick = (list) => list[Math.floor(draw() * list.length)];
const tally = { ends: 0, wrong: 0, designs: 0, unsound: 0, verdicts: 0 };

while (tally.ends < Number(options.ends) && Date.now() < until) {
  const model = pick(models);
  const values = readParameters(model, someOf(model), 'mm');
  const question = { model, shop, jig, units: 'mm' };
  const counted = judgeOf(question, values);
  const judge = (at) => {
    tally.verdicts += 1;
    return counted(at);
  };
  if (!(await judge({})).sound) {
    tally.unsound += 1;
    continue;
  }
  tally.designs += 1;
  const knob = pick(knobs(model, model.complete(values), []).filter(({ meta }) => meta.kind !== 'count'));
  const dimension = dimensionOf(knob, 'mm');
  const wanted = { dimensions: [dimension], across: undefined, together: undefined };
  const { alone } = await rangesOf(wanted, judge, glanceOf(question, values), () => {});
  const [{ span, below, above }] = alone;
  for (const [last, beyond] of [
    [span.from, below],
    [span.to, above],
  ]) {
    if (!beyond) continue;
    const out = Math.sign(beyond.value - last) * (dimension.step / 2);
    const inside = last === dimension.value ? last : last - out;
    const [kept, lost] = [
      await judge({ [dimension.name]: inside }),
      await judge({
        [dimension.name]: Math.min(dimension.most, Math.max(dimension.least, beyond.value + out)),
      }),
    ];
    tally.ends += 1;
    if (!kept.sound || lost.sound) {
      tally.wrong += 1;
      console.log(
        `wrong: ${model.name} ${dimension.name} ${last} | ${beyond.value} ${beyond.code}: ${JSON.stringify(values)}`,
      );
    }
    if (tally.ends % 10 === 0) tell();
  }
}
tell();
process.exitCode = tally.wrong > 0 ? 1 : 0;

function tell() {
  console.log(`${JSON.stringify(tally)} ${Math.round(process.memoryUsage.rss() / 2 ** 20)} MB`);
}

/** Two or three sizes anywhere in their ranges; the others follow. */
function someOf(model) {
  const sizes = Object.entries(model.parameters.shape).flatMap(([name, schema]) => {
    const { kind, min, max } = parameterMeta(name, schema);
    return kind === 'length' || kind === 'angle' ? [{ name, min, max }] : [];
  });
  return Object.fromEntries(
    Array.from({ length: 2 + Math.floor(2 * draw()) }, () => {
      const { name, min, max } = pick(sizes);
      return [name, min + (max - min) * draw()];
    }),
  );
}
