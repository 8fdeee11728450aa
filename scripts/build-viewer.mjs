// Packs the preview page's script into one classic script: a module would not load from a file on disk.
import { renameSync, writeFileSync } from 'node:fs';
import process from 'node:process';
import { build } from 'esbuild';

const FILE = 'dist/viewer.js';

const { outputFiles } = await build({
  entryPoints: ['src/viewer/viewer.ts'],
  bundle: true,
  format: 'iife',
  // its name for a script after it
  globalName: 'viewer',
  target: 'es2022',
  minify: true,
  legalComments: 'eof',
  logLevel: 'warning',
  write: false,
});

// whole or not at all: another process may be reading the one before
const own = `${FILE}.${process.pid}`;
writeFileSync(own, outputFiles[0].contents);
renameSync(own, FILE);
