// Packs the preview page's script into one classic script: a module would not load from a file on disk.
import { build } from 'esbuild';

await build({
  entryPoints: ['src/viewer/viewer.ts'],
  outfile: 'dist/viewer.js',
  bundle: true,
  format: 'iife',
  target: 'es2022',
  minify: true,
  legalComments: 'eof',
  logLevel: 'warning',
});
