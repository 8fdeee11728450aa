// Packs the compiled program into a few files: half of a short run is spent finding and reading some thousand small ones.
// Every layer's index and every model stays where it was, and what several of them use is packed once: a model of one's own
// that imports from dist meets the same classes. Libraries that load files of their own stay outside.
import { existsSync, readdirSync, rmSync } from 'node:fs';
import process from 'node:process';
import { build } from 'esbuild';

const layers = readdirSync('src')
  .map((name) => `src/${name}/index.ts`)
  // the preview's script is packed by itself, for a browser
  .filter((path) => existsSync(path) && !path.startsWith('src/viewer/'));
const models = readdirSync('models')
  .filter((name) => name.endsWith('.ts'))
  .map((name) => `models/${name}`);

const { metafile } = await build({
  entryPoints: ['src/cli/bin.ts', 'src/cli/judge-worker.ts', ...layers, ...models],
  outdir: 'dist',
  outbase: '.',
  // as deep as a layer, so that the models and package.json are found from there as well
  chunkNames: 'src/packed/[hash]',
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  // yaml is of the older kind and loaded late: packed, its functions would stand under `default` only
  external: ['manifold-3d', 'pdfkit', '@resvg/*', '@fontsource/*', 'three', 'esbuild', 'yaml'],
  // libraries of the older kind ask for Node's own modules by require
  banner: {
    js: "import { createRequire as requireOf } from 'node:module'; const require = requireOf(import.meta.url);",
  },
  logLevel: 'warning',
  metafile: true,
});

// chunks of earlier builds stay for a program that runs meanwhile, but are not shipped
if (process.env.npm_command === 'pack')
  for (const name of readdirSync('dist/src/packed'))
    if (!(`dist/src/packed/${name}` in metafile.outputs)) rmSync(`dist/src/packed/${name}`);
