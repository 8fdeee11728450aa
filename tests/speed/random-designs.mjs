/** The random designs of the property tests, for scripts that run the built program. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

/** Packs the generators, which are TypeScript, and loads them. */
async function loaded(file) {
  const folder = mkdtempSync(join(tmpdir(), 'tenonwright-designs-'));
  const outfile = join(folder, 'designs.mjs');
  try {
    await build({
      entryPoints: [fileURLToPath(new URL(`../properties/${file}`, import.meta.url))],
      outfile,
      bundle: true,
      format: 'esm',
      platform: 'node',
      target: 'node20',
      logLevel: 'warning',
    });
    return await import(pathToFileURL(outfile).href);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** @returns designs one by one, each with the values it was made from; without a design when the model refused them */
export async function randomDesigns(count, seed) {
  return (await loaded('sampled-designs.ts')).sampledDesigns(count, seed);
}

/** The same, most of them with one fault in their data. */
export async function spoiltDesigns(count, seed) {
  return (await loaded('spoilt-designs.ts')).spoiltDesigns(count, seed);
}
