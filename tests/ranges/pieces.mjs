// How many random settings of a piece told in a file are sound, every dimension drawn evenly over its range. After `npm run build`:
//   node tests/ranges/pieces.mjs [--runs 50] [--seed 1] [--show] [--set name=value,…] [piece …]
// A setting is sound when its full verdict has no finding of level error; one that a `must` refuses is counted apart.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { fractions } from '../fractions.mjs';

const root = path.resolve(import.meta.dirname, '../..');
const of = (folder) => import(`${root}/dist/src/${folder}/index.js`);
const { pieceFrom } = await of('notation');
const { parameterMeta } = await of('model');
const { builtInShop, jigOfShop, toolsOf } = await of('shop');
const { loadModel, OWN_MODELS } = await of('node');
const { verdictOf } = await of('verdict');

const { values: options, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    runs: { type: 'string', default: '50' },
    seed: { type: 'string', default: '1' },
    set: { type: 'string', default: '' },
    show: { type: 'boolean', default: false },
  },
});
const shop = builtInShop('mm');
const jig = jigOfShop(shop, await loadModel('jig', OWN_MODELS), 'mm');
const names = readdirSync(`${root}/pieces`).map((file) => file.replace(/\.yaml$/, ''));
const wanted = positionals.length > 0 ? positionals : names;
/** What a line of `must` says when it does not hold. */
const MUST = /, and must be (less than|at most|more than|at least|exactly) /;
let unsound = 0;
for (const name of wanted) {
  const text = readFileSync(name.endsWith('.yaml') ? name : `${root}/pieces/${name}.yaml`, 'utf8');
  const piece = told(text);
  if (options.show) show(piece.piece.build(piece.usual, toolsOf(shop)));
  const tally = {};
  const set = Object.fromEntries(
    options.set
      .split(',')
      .filter(Boolean)
      .map((one) => [one.split('=')[0], Number(one.split('=')[1])]),
  );
  await judge(piece, { ...piece.usual, ...set }, tally, 'as told');
  const draw = fractions(Number(options.seed));
  for (let i = 0; i < Number(options.runs); i += 1)
    await judge(piece, { ...piece.drawn(draw), ...set }, tally);
  console.log(`${name}: ${JSON.stringify(tally)}`);
}
process.exitCode = unsound > 0 ? 1 : 0;

async function judge({ piece }, values, tally, label) {
  const count = (key) => {
    tally[key] = (tally[key] ?? 0) + 1;
  };
  const { findings, refused } = await verdictOf({ model: piece, shop, jig, units: 'mm' }, values);
  if (refused && MUST.test(refused.message)) {
    count('must');
    return;
  }
  const errors = findings.filter(({ level }) => level === 'error');
  const key = refused ? 'refused' : errors.length > 0 ? 'unsound' : 'sound';
  count(key);
  if (label)
    console.log(
      `  ${label}: ${[...new Set(findings.map(({ level, code }) => `${level} ${code}`))].join(', ')}`,
    );
  if (key === 'sound') return;
  unsound += 1;
  console.log(`  ${JSON.stringify(values)}`);
  if (refused) console.log(`    ${refused.message}`);
  for (const { code, message } of errors.slice(0, 2)) console.log(`    ${code}: ${message.slice(0, 300)}`);
}

function told(text) {
  const piece = pieceFrom(text, 'piece');
  const metas = Object.entries(piece.parameters.shape).map(([name, schema]) => [
    name,
    parameterMeta(name, schema),
  ]);
  return {
    piece,
    usual: Object.fromEntries(
      metas.flatMap(([name, meta]) => (meta.default === undefined ? [] : [[name, meta.default]])),
    ),
    drawn: (draw) => Object.fromEntries(metas.map(([name, meta]) => [name, drawnFrom(meta, draw)])),
  };
}

function drawnFrom({ kind, min, max, choices }, draw) {
  if (choices) return choices[Math.floor(draw() * choices.length)];
  if (kind === 'flag') return draw() < 0.5;
  if (kind === 'count') return min + Math.floor(draw() * (max - min + 1));
  return Math.round((min + (max - min) * draw()) * 2) / 2;
}

function show({ boards, joints, captives = [], fastenings = [] }) {
  const fixed = (numbers, digits) => numbers.map((one) => one.toFixed(digits)).join(' ');
  for (const { board, place } of boards)
    console.log(
      `  ${board.id.padEnd(24)} ${fixed([board.blank.length, board.blank.width, board.blank.thickness], 1).padEnd(20)} at ${fixed(place.origin, 1)}; x ${fixed(place.x, 2)}; z ${fixed(place.z, 2)} ${board.bevels.map(({ id }) => id).join(' ')}`,
    );
  console.log(
    `  ${joints.map(({ id, tenons }) => `${id} ${tenons.length}`).join(', ')}; ${captives.length} panels, ${fastenings.length} fastenings`,
  );
}
