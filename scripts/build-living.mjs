// Packs the living plan: the page's script, and beside it the whole program for its worker with the kernel and the fonts of the plan,
// as a ZIP that the page holds as text. What draws PNG pictures is a ZIP of its own: only a page that is to have them holds it.
import { readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import process from 'node:process';
import { build } from 'esbuild';
import { zipSync } from 'fflate';
import { smallFont } from './small-font.mjs';
import { withoutBrotli } from './without-brotli.mjs';

const require = createRequire(import.meta.url);
const installed = (path) => new Uint8Array(readFileSync(require.resolve(path)));

const classic = {
  bundle: true,
  format: 'iife',
  platform: 'browser',
  target: 'es2022',
  minify: true,
  legalComments: 'eof',
  logLevel: 'warning',
  write: false,
};

const models = readdirSync('models')
  .filter((name) => name.endsWith('.ts'))
  .map((name) => name.replace(/\.ts$/, ''));

const [page, worker] = await Promise.all([
  build({ ...classic, entryPoints: ['src/living/living-page.ts'] }),
  build({
    ...classic,
    stdin: {
      contents: `import './src/living/without-eval.js';
${models.map((name) => `import ${name} from './models/${name}.js';`).join('\n')}
import { serve } from './src/living/index.js';
serve([${models.join(', ')}], self);`,
      resolveDir: '.',
      loader: 'ts',
    },
    // two libraries ask for these when they find themselves in Node, and only then
    external: ['node:fs', 'node:module', 'node:path'],
    plugins: [withoutBrotli],
    // the kernel reckons where its file would lie, and is handed its bytes
    define: { 'import.meta.url': '"file:///"' },
  }),
]);

const font = (weight) =>
  smallFont(installed(`@fontsource/dejavu-sans/files/dejavu-sans-latin-${weight}-normal.woff`));
const parts = {
  'worker.js': worker.outputFiles[0].contents,
  'manifold.wasm': installed('manifold-3d/manifold.wasm'),
  'plain.woff': font(400),
  'bold.woff': font(700),
  // what the words at the cursor of a piece's text come from
  'piece.schema.json': new Uint8Array(readFileSync('docs/piece.schema.json')),
};
/** Five letters for four bytes, from # on; '<' would end a script and is written '!'. Read back by `src/living/as-bytes.ts`. */
function asText(bytes) {
  const words = new DataView(new ArrayBuffer(4 * Math.ceil(bytes.length / 4)));
  new Uint8Array(words.buffer).set(bytes);
  const letters = Buffer.alloc((words.byteLength / 4) * 5);
  for (let word = 0; 4 * word < words.byteLength; word += 1) {
    let left = words.getUint32(4 * word);
    for (let i = 4; i >= 0; i -= 1) {
      const letter = 35 + (left % 85);
      letters[5 * word + i] = letter === 60 ? 33 : letter;
      left = Math.floor(left / 85);
    }
  }
  return letters.toString('latin1');
}

const zipped = (files) => asText(zipSync(files, { level: 9, mtime: '1980-01-01T00:00:00' }));
const renderer = { 'renderer.wasm': installed('@resvg/resvg-wasm/index_bg.wasm') };

// whole or not at all: another process may be reading the one before
const write = (file, contents) => {
  const own = `${file}.${process.pid}`;
  writeFileSync(own, contents);
  renameSync(own, file);
};
write('dist/living.js', page.outputFiles[0].contents);
write('dist/living-engine.txt', zipped(parts));
write('dist/living-renderer.txt', zipped(renderer));
if (process.argv.includes('--sizes'))
  for (const [name, bytes] of Object.entries({ ...parts, ...renderer }))
    process.stdout.write(`${name} ${bytes.length} packed ${zipSync({ a: [bytes, { level: 9 }] }).length}\n`);
