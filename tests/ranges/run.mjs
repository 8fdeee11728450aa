// How much of each stated range can be built when the other dimensions are left alone. Run by hand, after `npm run build`:
//   node tests/ranges/run.mjs [--each 24] [--together 200] [--only stool,jig,frame]
// With --together all dimensions are drawn at once, evenly over their ranges, that many times.
// A value is sound when the design has no finding of level error.
import path from 'node:path';
import { fractions } from '../fractions.mjs';

const root = path.resolve(import.meta.dirname, '../../dist/src');
const { checkDesign, loadModel, OWN_MODELS } = await import(`${root}/node/index.js`);
const { parameterMeta, readParameters, optionName } = await import(`${root}/model/index.js`);
const { builtInShop, jigOfShop } = await import(`${root}/shop/index.js`);

const option = (name, usual) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? usual : process.argv[at + 1];
};
const each = Number(option('each', 24));
const together = Number(option('together', 0));
const shop = builtInShop('mm');
const jig = jigOfShop(shop, await loadModel('jig', OWN_MODELS), 'mm');

for (const name of option('only', 'stool,jig,frame').split(',')) {
  const model = await loadModel(name, OWN_MODELS);
  if (together > 0) {
    await drawnTogether(name, model);
    continue;
  }
  for (const [parameter, schema] of Object.entries(model.parameters.shape)) {
    const { kind, min, max } = parameterMeta(parameter, schema);
    if (min === undefined || max === undefined) continue;
    // evenly spread over the range, its ends included; whole numbers once each
    const values = [
      ...new Set(
        Array.from({ length: each }, (_, i) => min + ((max - min) * i) / (each - 1)).map((v) =>
          kind === 'count' ? Math.round(v) : Math.round(v * 10) / 10,
        ),
      ),
    ];
    const wrong = new Map();
    let sound = 0;
    for (const value of values) {
      const code = await verdict(model, { [parameter]: value });
      if (code === undefined) sound += 1;
      else wrong.set(code, [...(wrong.get(code) ?? []), value]);
    }
    const share = Math.round((100 * sound) / values.length);
    const why = [...wrong].map(([code, at]) => `${code} at ${at.join(' ')}`).join('; ');
    console.log(
      `${share < 80 ? '!' : ' '} ${String(share).padStart(3)} % ${name} --${optionName(parameter)} ${why}`,
    );
  }
}

async function drawnTogether(name, model) {
  const ranges = Object.entries(model.parameters.shape)
    .map(([parameter, schema]) => ({ parameter, ...parameterMeta(parameter, schema) }))
    .filter(({ min, max }) => min !== undefined && max !== undefined);
  const draw = fractions(20_240_611);
  const wrong = new Map();
  let sound = 0;
  for (let run = 0; run < together; run += 1) {
    const given = Object.fromEntries(
      ranges.map(({ parameter, kind, min, max }) => {
        const value = min + (max - min) * draw();
        return [parameter, kind === 'count' ? Math.round(value) : Math.round(value * 10) / 10];
      }),
    );
    const code = await verdict(model, given);
    if (code === undefined) sound += 1;
    else wrong.set(code, (wrong.get(code) ?? 0) + 1);
  }
  const why = [...wrong].sort(([, a], [, b]) => b - a).map(([code, times]) => `${code} ${times}`);
  console.log(`${name}: ${sound} of ${together} sound; else ${why.join(', ')}`);
}

/** The code of the first error, or nothing. */
async function verdict(model, given) {
  try {
    const values = readParameters(model, given, 'mm');
    const { findings } = await checkDesign({
      model,
      values,
      shop,
      jig,
      units: 'mm',
      out: 'out',
      format: 'binary',
      curves: 'arcs',
      force: false,
      given: Object.keys(given),
      cures: false,
      version: '0',
      progress: () => {},
    });
    return findings.find(({ level }) => level === 'error')?.code;
  } catch (error) {
    if (error.code === undefined) throw error;
    return error.code;
  }
}
