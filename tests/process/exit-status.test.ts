// The built program, started as a person starts it.

import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { expect, test } from 'vitest';
import { madeByProgram } from './made-by-program.js';
import { pairIn } from './pair.js';
import { filesIn, ownFolder, PROGRAM, run, start } from './program.js';

const out = ownFolder();

/** A post thinner than its mortise needs: the walls beside a 14 mm mortise in 15 mm of wood are too thin. */
const BROKEN = [pairIn(out), '--cutter', '14', '--thick', '15'] as const;

const templatesIn = (folder: string): readonly string[] =>
  filesIn(folder).filter((file) => /^templates\/[^/]+$/.test(file));

const everyTemplateIn = (folder: string): readonly string[] =>
  filesIn(folder).filter((file) => file.startsWith('templates/'));

test('a sound stool ends with 0, and everything it tells of is there', async () => {
  const { ended, folder } = await madeByProgram('stool');
  expect(ended).toMatchObject({ status: 0, out: '', err: '' });
  expect(templatesIn(folder)).toHaveLength(4);
});

test('a size out of its range ends with 2, one message on standard error and no stack trace', async () => {
  const {
    status,
    out: said,
    err,
  } = await run('make', 'stool', '--height', '12', '--out', path.join(out, 'no'));
  expect(status).toBe(2);
  expect(said).toBe('');
  expect(err).toMatch(/^tenonwright: .*height/);
  expect(err).not.toMatch(/^\s+at /m);
  expect(existsSync(path.join(out, 'no'))).toBe(false);
});

test('an option that does not exist ends with 2 and names the nearest one', async () => {
  const { status, err } = await run('check', 'stool', '--heigth', '230');
  expect(status).toBe(2);
  expect(err).toContain('--height');
});

test('an output folder that is a file ends with 2 before any work is done', async () => {
  const { status, err } = await run('make', 'frame', '--out', import.meta.filename);
  expect(status).toBe(2);
  // at once: no step of the work is told before it
  expect(err).toMatch(/^tenonwright: .* is not a folder/);
  expect(err).not.toMatch(/^\s+at /m);
});

test('a design with an error finding ends with 3 and holds back every template, solids and report stay', async () => {
  const folder = path.join(out, 'broken');
  const { status, out: said } = await run('make', ...BROKEN, '--out', folder);
  expect(status).toBe(3);
  const files = filesIn(path.join(folder, 'pair'));
  expect(files.filter((file) => /^(templates|shop|plan)/.test(file))).toEqual([]);
  expect(files).toEqual(expect.arrayContaining(['stl/post.mm.stl', 'summary.json', 'files.sha256']));
  expect(said).toContain('--force');
  const { findings } = JSON.parse(readFileSync(path.join(folder, 'pair/summary.json'), 'utf8')) as {
    findings: { level: string; subjects: string[] }[];
  };
  const errors = findings.filter(({ level }) => level === 'error');
  expect(errors.length).toBeGreaterThan(0);
  expect(errors.flatMap(({ subjects }) => subjects)).toContain('post');
});

test('--force writes the templates of a failed design, each with the words FAILED CHECKS, and still ends with 3', async () => {
  const folder = path.join(out, 'forced');
  const { status } = await run('make', ...BROKEN, '--force', '--only', 'dxf', '--out', folder);
  expect(status).toBe(3);
  const templates = templatesIn(path.join(folder, 'pair'));
  expect(templates).toHaveLength(2);
  for (const file of everyTemplateIn(path.join(folder, 'pair')))
    expect(readFileSync(path.join(folder, 'pair', file), 'utf8'), file).toContain('FAILED CHECKS');
  const { folder: sound } = await madeByProgram('stool');
  for (const file of everyTemplateIn(sound))
    expect(readFileSync(path.join(sound, file), 'utf8'), file).not.toContain('FAILED CHECKS');
});

test('the printed shop file and a file of dimensions are read by the built program too', async () => {
  const files = path.join(out, 'given');
  mkdirSync(files, { recursive: true });
  const shop = path.join(files, 'shop.yaml');
  writeFileSync(shop, (await run('shop', '--example')).out);
  const from = path.join(files, 'frame.yaml');
  writeFileSync(from, 'length: 512\n');
  const { status, out: said, err } = await run('check', 'frame', '--shop', shop, '--from', from, '--json');
  expect({ status, err }).toEqual({ status: 0, err: '' });
  expect(JSON.parse(said)).toMatchObject({ parameters: { length: { value: 512, unit: 'mm' } } });
});

test('check ends with 3 for the same design', async () => {
  expect((await run('check', ...BROKEN, '--quiet')).status).toBe(3);
});

test('--json prints one JSON text on standard output and nothing else, the same as summary.json', async () => {
  const folder = path.join(out, 'json');
  const { status, out: said, err } = await run('make', 'frame', '--json', '--only', 'stl', '--out', folder);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  expect(JSON.parse(said)).toEqual(JSON.parse(readFileSync(path.join(folder, 'frame/summary.json'), 'utf8')));
});

test('--json of a failed design is JSON too', async () => {
  const { status, out: said } = await run('check', ...BROKEN, '--json');
  expect(status).toBe(3);
  expect(JSON.parse(said)).toMatchObject({ design: 'pair' });
});

test('progress that nobody reads is no fault, and the work is done', async () => {
  const folder = path.join(out, 'unread');
  const { child, ended } = start('make', 'frame', '--only', 'stl', '--out', folder);
  child.stderr!.destroy();
  expect((await ended).status).toBe(0);
  expect(filesIn(path.join(folder, 'frame'))).toContain('summary.json');
});

test('a full standard output ends with 2 and a sentence, a closed one with 0', async () => {
  const into = (file: string) =>
    spawnSync('sh', ['-c', `"$0" "$1" describe stool ${file}`, process.execPath, PROGRAM], {
      encoding: 'utf8',
    });
  const full = into('> /dev/full');
  expect(full.status).toBe(2);
  expect(full.stderr).toBe(
    'tenonwright: standard output cannot be written (the system says ENOSPC): make room, or send it elsewhere\n',
  );
  expect(into('| head -1').stderr).toBe('');
});

test('an older Node is told plainly before anything else is loaded', () => {
  const { engines } = JSON.parse(readFileSync(path.resolve(PROGRAM, '../../../../package.json'), 'utf8'));
  const asOld = (version: string) =>
    spawnSync(
      process.execPath,
      [
        '--import',
        `data:text/javascript,Object.defineProperty(process, 'versions', { value: { ...process.versions, node: '${version}' } })`,
        PROGRAM,
        'list',
      ],
      { encoding: 'utf8' },
    );
  const { status, stderr } = asOld('18.20.4');
  expect(status).toBe(2);
  expect(stderr).toMatch(/^tenonwright: this is Node 18\.20\.4; it needs 20\.19 or later: install .*\n$/);
  expect(engines.node).toBe('>=20.19');
  expect(asOld('20.18.9').status).toBe(2);
  expect(asOld('20.19.0').status).toBe(0);
});

test.each([
  ['--only', 'stl,papers', /'papers', which is not a kind of file: choose from/],
  ['--print-scale', '3', /print/],
  ['--out', '/proc/none/at/all', /cannot be written/],
])('%s %s is refused before any work is done', async (option, value, message) => {
  const { status, err } = await run('make', 'frame', option, value);
  expect(status).toBe(2);
  // at once: no step of the work is told before it
  expect(err).toMatch(/^tenonwright: /);
  expect(err).toMatch(message);
});
