/** The random designs of the property tests, for scripts that run the built program. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

/** Packs the generators of a copy of the program, which are TypeScript, and loads them. */
async function loaded(file, copy = fileURLToPath(new URL('../../', import.meta.url))) {
  const folder = mkdtempSync(join(tmpdir(), 'tenonwright-designs-'));
  const outfile = join(folder, 'designs.mjs');
  try {
    await build({
      entryPoints: [join(copy, 'tests/properties', file)],
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

/**
 * @param copy folder of another copy of the program that builds them; this one when left out
 * @returns designs one by one, each with the values it was made from; without a design when the model refused them
 */
export async function randomDesigns(count, seed, copy) {
  return (await loaded('sampled-designs.ts', copy)).sampledDesigns(count, seed);
}

/** The same, most of them with one fault in their data. */
export async function spoiltDesigns(count, seed) {
  return (await loaded('spoilt-designs.ts')).spoiltDesigns(count, seed);
}
