/**
 * Builds and judges random designs with this program and with another built copy of it, and tells where they differ: another
 * refusal, another finding, or a figure that is off by more than 1e-6 mm. For changes that make a verdict faster and must not make
 * it another.
 *
 * node tests/speed/same-verdicts.mjs <folder of the other copy> [designs] [seed]
 */
import { join, resolve } from 'node:path';
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { randomDesigns } from './random-designs.mjs';
import { verdictsBy } from './verdicts.mjs';

const [other = '.', designs = '1000', seed = '20240611'] = process.argv.slice(2);
const here = await verdictsBy(new URL('../../dist/', import.meta.url));
const there = await verdictsBy(pathToFileURL(join(resolve(other), 'dist/')));

const OFF = 1e-6;
const tally = { designs: 0, refused: 0, findings: 0, figures: 0, differ: 0 };
let most = 0;

const builtThere = await randomDesigns(Number(designs), Number(seed), resolve(other));
for (const { name, design } of await randomDesigns(Number(designs), Number(seed))) {
  const { design: before } = builtThere.next().value;
  if (!design && !before) {
    tally.refused += 1;
    continue;
  }
  tally.designs += 1;
  let wrong = 'refused by one of them';
  if (design && before) {
    const [mine, theirs] = [await here(design), await there(before)];
    tally.findings += theirs.findings.length;
    wrong = difference(mine, theirs, '');
  }
  if (wrong) {
    tally.differ += 1;
    console.log(`${name}: ${wrong}`);
  }
}
console.log(`${JSON.stringify(tally)}, figures off by at most ${most}`);
process.exitCode = tally.differ > 0 ? 1 : 0;

/** Where two verdicts first differ; nothing when they are alike. */
function difference(a, b, path) {
  if (typeof a === 'number' && typeof b === 'number') {
    tally.figures += 1;
    if (a === b || (Number.isNaN(a) && Number.isNaN(b))) return '';
    const off = Math.abs(a - b) / Math.max(1, Math.abs(b));
    most = Math.max(most, off);
    return off <= OFF ? '' : `${path} is ${a}, was ${b}`;
  }
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b)
    return a === b ? '' : `${path} is ${JSON.stringify(a)}, was ${JSON.stringify(b)}`;
  for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
    const found = difference(a[key], b[key], `${path}/${key}`);
    if (found) return found;
  }
  return '';
}
