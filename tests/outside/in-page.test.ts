// The writers in a browser's page, with no Node: what they make there is what the program writes to the disk.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { build } from 'esbuild';
import { afterAll, expect } from 'vitest';
import { SUPPLIES } from '../../src/node/index.js';
import { browser } from './browser.js';
import { CASES, workshop } from './designs.js';
import { CHROMIUM, testWith } from './programs.js';

const root = path.resolve(import.meta.dirname, '../..');
const folder = mkdtempSync(path.join(tmpdir(), 'tenonwright-in-page-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const made = workshop();
const open = browser();

/** What the page does: it is packed for a browser, and told what it needs as text. */
const SCRIPT = `
import { designFiles, fileKinds, sha256, startDesign } from './src/files/index.js';
import { readParameters } from './src/model/index.js';
import { builtInShop } from './src/shop/index.js';
import frame from './models/frame.js';
import jig from './models/jig.js';

const { kernel, plain, bold, wasm, viewer } = JSON.parse(document.getElementById('given').textContent);
const bytes = (text) => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
globalThis.told = (async () => {
  const started = await startDesign({
    model: frame,
    values: readParameters(frame, {}, 'mm'),
    shop: builtInShop('mm'),
    jig: jig.build(readParameters(jig, {}, 'mm')),
    units: 'mm', format: 'binary', curves: 'arcs', force: true, version: '0.0.0', progress: () => {},
  }, bytes(kernel).buffer);
  const { files } = await designFiles(started, fileKinds(undefined), {
    planFonts: async () => ({ plain: bytes(plain), bold: bytes(bold) }),
    renderer: async () => bytes(wasm),
    viewerScript: async () => viewer,
  });
  started.dispose();
  return files.map((file) => [file.path, sha256(file.bytes), file.bytes.length]);
})();
`;

testWith(CHROMIUM, 'every file is made in a page too, to the byte as on the disk', async () => {
  const packed = await build({
    stdin: { contents: SCRIPT, resolveDir: root, loader: 'ts' },
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'browser',
    // two libraries ask for these when they find themselves in Node, and only then
    external: ['node:fs', 'node:module', 'node:path'],
    logLevel: 'silent',
  });
  const kernel = readFileSync(createRequire(import.meta.url).resolve('manifold-3d/manifold.wasm'));
  const text = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64');
  const { plain, bold } = await SUPPLIES.planFonts();
  const given = {
    kernel: text(kernel),
    plain: text(plain),
    bold: text(bold),
    wasm: text(await SUPPLIES.renderer()),
    viewer: await SUPPLIES.viewerScript(),
  };
  const safe = (source: string) => source.replaceAll('</', '<\\/');
  const file = path.join(folder, 'page.html');
  writeFileSync(
    file,
    `<!doctype html><meta charset="utf-8"><script type="application/json" id="given">${safe(JSON.stringify(given))}</script><script type="module">${packed.outputFiles[0]!.text}</script>`,
  );
  const { page, complaints } = await open(file);
  const inPage = await page.evaluate(
    () => (globalThis as unknown as { told: Promise<[string, string, number][]> }).told,
  );
  expect(complaints).toEqual([]);
  const frame = CASES.find(({ called }) => called === 'frame')!;
  const { files, folder: onDisk } = await made(frame);
  expect(inPage.length).toBeGreaterThan(20);
  expect(Object.fromEntries(inPage.map(([name, hash]) => [name, hash]))).toEqual(
    Object.fromEntries(
      files
        .map(({ path: file, sha256 }) => [path.relative(onDisk, file), sha256] as const)
        .filter(([name]) => name !== 'summary.json'),
    ),
  );
});
