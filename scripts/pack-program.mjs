// Packs the compiled program into one script, beside what the engine makes of it: half of a short run is spent finding and
// reading some thousand small files, and a sixth of the rest translating them. Every layer's index and every model stays where it
// was, as a few names taken from the one script: a model of one's own that imports from dist meets the same classes. Libraries
// that load files of their own stay outside.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, posix, resolve } from 'node:path';
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { byPlaces } from './by-places.mjs';
import { withoutBrotli } from './without-brotli.mjs';

const PACKED = 'dist/src/packed';
const WORKER = 'src/cli/ranges/judge-worker.ts';

const layers = readdirSync('src')
  .map((name) => `src/${name}/index.ts`)
  // scripts of pages are packed by themselves, for a browser
  .filter((path) => existsSync(path) && !/^src\/(viewer|living)\//.test(path));
const models = readdirSync('models')
  .filter((name) => name.endsWith('.ts'))
  .map((name) => `models/${name}`);
const parts = ['src/cli/run.ts', WORKER, ...layers, ...models];

const texts = byPlaces(parts);
const arraysByPlaces = {
  name: 'arrays-by-places',
  setup: ({ onLoad }) =>
    onLoad({ filter: /\/(src|models)\/.*\.ts$/ }, ({ path }) => ({
      contents: texts.get(path),
      loader: 'js',
    })),
};

const { outputFiles } = await build({
  stdin: {
    contents: `export const parts = {${parts.map((path) => `'${path}': () => require('./${path}')`)}};`,
    resolveDir: '.',
  },
  bundle: true,
  write: false,
  format: 'cjs',
  platform: 'node',
  target: 'node20',
  minifyWhitespace: true,
  // as deep as a layer, so that the models and package.json are found from there as well
  define: { 'import.meta.url': '__here' },
  external: ['manifold-3d', '@resvg/*', '@fontsource/*', 'three', 'esbuild', 'yaml'],
  plugins: [withoutBrotli, arraysByPlaces],
  logLevel: 'warning',
});
// a script that comes with its translation cannot import by itself
const code = outputFiles[0].text
  .replace(/\bimport\(/g, '__load(')
  // a byte for a letter is read and kept at half the cost; only patterns and comments have others
  .replace(/[^\0-\x7f]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);
const program = `(function (require, module, exports, __here, __load) {${code}\n})`;

// by its content: neither a program that runs meanwhile nor an older translation meets another script
const name = createHash('sha256').update(program).digest('hex').slice(0, 8);
const at = (file) => `${PACKED}/${file}`;
mkdirSync(PACKED, { recursive: true });
writeFileSync(at(`${name}.program.js`), program, 'latin1');
writeFileSync(
  at(`${name}.js`),
  `import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { Script } from 'node:vm';
// a run that writes all files uses twice as much of the script as any other: it has a translation of its own
const whole = process.argv[2] === 'make' && !process.argv.some((word) => word.startsWith('--only'));
const ends = ['program.js', whole ? 'make.code' : 'code'];
const [filename, code] = ends.map((end) => fileURLToPath(new URL('./${name}.' + end, import.meta.url)));
// the engine sets a translation aside that was made by another version of it
const script = new Script(readFileSync(filename, 'latin1'), {
  filename,
  ...(existsSync(code) && { cachedData: readFileSync(code) }),
});
const module = { exports: {} };
script.runInThisContext()(createRequire(import.meta.url), module, module.exports, import.meta.url, (what) => import(what));
export const part = (path) => module.exports.parts[path]();
export const translation = () => script.createCachedData();
`,
);
const { part } = await import(pathToFileURL(resolve(at(`${name}.js`))).href);
for (const path of parts) {
  const file = `dist/${path.replace(/ts$/, 'js')}`;
  const names = path === WORKER ? [] : Object.keys(part(path));
  const named = names.filter((one) => one !== 'default');
  writeFileSync(
    file,
    `import { part } from '${posix.relative(posix.dirname(file), at(`${name}.js`))}';
const of = part('${path}');
export const { ${named.join(', ')} } = of;
${names.includes('default') ? 'export default of.default;\n' : ''}`,
  );
}

// what a run has used is translated when it ends: kept for the next ones of its kind, whatever the run finds
const out = mkdtempSync(join(tmpdir(), 'tenonwright-pack-'));
for (const [end, words] of [
  ['code', ['make', '--only', 'stl,dxf,shop', '--out', out]],
  ['make.code', ['make', '--out', out]],
]) {
  const keep = `import { writeFileSync } from 'node:fs';
import { translation } from '${pathToFileURL(resolve(at(`${name}.js`))).href}';
process.on('exit', () => writeFileSync('${at(`${name}.${end}`)}', translation()));`;
  const imported = `data:text/javascript,${encodeURIComponent(keep)}`;
  const [command, ...options] = words;
  spawnSync(
    process.execPath,
    ['--import', imported, 'dist/src/cli/bin.js', command, 'stool', '--quiet', ...options],
    { stdio: 'ignore' },
  );
}
rmSync(out, { recursive: true });

// a run has read all of its script when it starts: those of earlier builds are of no more use
for (const file of readdirSync(PACKED)) if (!file.startsWith(`${name}.`)) rmSync(at(file));
