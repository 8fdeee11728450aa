/**
 * Judges random designs, most of them with a fault in their data, by the quick verdict and by the full one. A design the quick
 * one calls sound must have no error by the full one.
 *
 * node tests/speed/quick-verdicts.mjs [designs] [seed]
 */
import process from 'node:process';
import jig from '../../dist/models/jig.js';
import { quickVerdict } from '../../dist/src/checks/index.js';
import { speaker } from '../../dist/src/length/index.js';
import { readParameters } from '../../dist/src/model/index.js';
import { builtInShop, jigAtHand } from '../../dist/src/shop/index.js';
import { spoiltDesigns } from './random-designs.mjs';
import { verdictsBy } from './verdicts.mjs';

const [designs = '5000', seed = '20240611'] = process.argv.slice(2);
const full = await verdictsBy(new URL('../../dist/', import.meta.url));
const say = speaker('mm');
const { plate } = jigAtHand(jig.build(readParameters(jig, {}, 'mm')));
const tools = { shop: builtInShop('mm'), plate: plate.thickness };
const tally = { refused: 0, sound: 0, bothSound: 0, bothFaulty: 0, stricter: 0, wrong: 0 };
const times = [];

for (const { name, design } of await spoiltDesigns(Number(designs), Number(seed))) {
  if (!design) {
    tally.refused += 1;
    continue;
  }
  const before = process.cpuUsage();
  const quick = quickVerdict(design, say, tools);
  const { user, system } = process.cpuUsage(before);
  times.push((user + system) / 1000);
  const errors = await errorsOf(design);
  if (errors.length === 0) tally.sound += 1;
  if (quick.sound && errors.length > 0) {
    tally.wrong += 1;
    console.log(`${name}: called sound, but ${errors.join('; ')}`);
  } else if (quick.sound) tally.bothSound += 1;
  else if (errors.length > 0) tally.bothFaulty += 1;
  else tally.stricter += 1;
}
times.sort((a, b) => a - b);
console.log(JSON.stringify(tally));
console.log(
  `a quick verdict: ${times[times.length >> 1].toFixed(2)} ms of processor, the middle one of ${times.length}`,
);
process.exitCode = tally.wrong > 0 ? 1 : 0;

/** Errors of the full verdict; a body the kernel refuses is one. */
async function errorsOf(design) {
  try {
    return (await full(design)).findings.map(({ key }) => key).filter((key) => key.startsWith('error'));
  } catch (error) {
    return [String(error.message)];
  }
}
