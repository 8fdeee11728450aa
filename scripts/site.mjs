// Writes out/site/tenonwright.html: one page with every design that comes with the program, ready for any web host. Run after a build.
import { mkdirSync, writeFileSync } from 'node:fs';
import process from 'node:process';
import { livingPage, withMade } from '../dist/src/files/index.js';
import { readParameters } from '../dist/src/model/index.js';
import {
  loadModel,
  loadPiece,
  modelNames,
  OWN_MODELS,
  OWN_PIECES,
  pieceNames,
  SUPPLIES,
  shippedRangesText,
  version,
} from '../dist/src/node/index.js';
import { newPiece } from '../dist/src/notation/index.js';
import { aboutOf } from '../dist/src/range/index.js';
import { builtInShop, jigOfShop } from '../dist/src/shop/index.js';

const units = process.argv.includes('--inches') ? 'in' : 'mm';
const shop = builtInShop(units);
const models = await Promise.all((await modelNames(OWN_MODELS)).map((name) => loadModel(name, OWN_MODELS)));
const pieces = await Promise.all(
  (await pieceNames(OWN_PIECES)).map((name) => loadPiece(OWN_PIECES, `${name}.yaml`, [])),
);
const jig = jigOfShop(
  shop,
  models.find(({ name }) => name === 'jig'),
  units,
);
const stool = models.find(({ name }) => name === 'stool');
const program = await version();

const designs = [stool, ...models.filter((one) => one !== stool), ...pieces].map((model) => {
  const text = shippedRangesText(model.name);
  const ranges = text === undefined ? undefined : JSON.parse(text);
  const about = () => aboutOf({ model, shop, jig, units }, readParameters(model, {}, units), program);
  return {
    name: model.name,
    title: model.title,
    summary: model.summary,
    ...(model.told && { told: { file: model.toldIn, text: model.told } }),
    // ranges are of the very design they were proved for
    ...(ranges && ranges.about === about() && { ranges }),
  };
});
const own = { file: 'my-shelf.yaml', text: newPiece('my-shelf', 'piece.schema.json') };
designs.push({ name: 'my-shelf', title: 'a piece of your own', summary: '', told: own });

const request = {
  model: stool,
  values: readParameters(stool, {}, units),
  shop,
  jig,
  units,
  format: 'binary',
  curves: 'arcs',
  force: false,
  version: program,
  progress: () => {},
};
const page = await withMade(request, async (made) =>
  livingPage(
    made,
    designs,
    await SUPPLIES.viewerScript(),
    await SUPPLIES.livingScripts(process.argv.includes('--living-pictures')),
  ),
);
mkdirSync('out/site', { recursive: true });
writeFileSync('out/site/tenonwright.html', page);
process.stdout.write(
  `out/site/tenonwright.html, ${(page.length / 1e6).toFixed(2)} MB: put it on any web host, or open it from the disk\n`,
);
