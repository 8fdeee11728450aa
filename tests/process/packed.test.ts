// The program as it is packed for others: only what runs, and it runs.

import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, symlinkSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { expect, test } from 'vitest';
import { filesIn, ownFolder } from './program.js';

const root = path.resolve(import.meta.dirname, '../..');
const folder = ownFolder();

test('the packed program holds what runs and nothing else, and makes a frame', () => {
  // built already; building again would take the files from under the other tests
  execFileSync('npm', ['pack', '--ignore-scripts', '--silent', '--pack-destination', folder], { cwd: root });
  const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
  execFileSync('tar', ['-xf', `tenonwright-${version}.tgz`], { cwd: folder });
  const unpacked = path.join(folder, 'package');
  const others = filesIn(unpacked).filter((file) => !/^dist\/.*\.js$/.test(file));
  const data = /^(pieces\/[a-z-]+\.yaml|shared\/ranges\/[a-z-]+\.json)$/;
  expect(others.filter((file) => !data.test(file))).toEqual([
    'LICENSE',
    'README.md',
    'dist/living-engine.txt',
    'dist/living-renderer.txt',
    'docs/piece.schema.json',
    'package.json',
  ]);
  expect(readFileSync(path.join(unpacked, 'LICENSE'), 'utf8')).toMatch(/^MIT License\n/);
  symlinkSync(path.join(root, 'node_modules'), path.join(unpacked, 'node_modules'));
  execFileSync(process.execPath, ['dist/src/cli/bin.js', 'make', 'frame', '--quiet'], { cwd: unpacked });
  expect(existsSync(path.join(unpacked, 'out/frame/plan.a4.pdf'))).toBe(true);
  const check = ['dist/src/cli/bin.js', 'check', 'mirror-frame', '--quiet'];
  execFileSync(process.execPath, check, { cwd: unpacked });
});

test('no image library and no second bundler comes with the kernel', () => {
  const { packages } = JSON.parse(readFileSync(path.join(root, 'package-lock.json'), 'utf8'));
  const names = Object.entries(packages as Record<string, { name?: string }>).map(
    ([at, { name }]) => name ?? at.replace(/^.*node_modules\//, ''),
  );
  expect(
    names.filter((name) => /^(sharp|@img\/.*|esbuild-wasm|@gltf-transform\/functions)$/.test(name)),
  ).toEqual([]);
});
