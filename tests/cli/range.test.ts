import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { run } from '../../src/cli/index.js';

const folder = mkdtempSync(path.join(tmpdir(), 'tenonwright-range-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function line(...argv: string[]): Promise<{ status: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const status = await run(argv, {
    out: { write: (text) => (out += text) },
    err: { write: (text) => (err += text) },
    isTerminal: false,
    cwd: folder,
  });
  return { status, out, err };
}

const read = (name: string): string => readFileSync(path.join(folder, name), 'utf8');

/** Two dimensions, and little to judge: a post on a sill. */
const PIECE = 'post.yaml';
beforeAll(() =>
  writeFileSync(
    path.join(folder, PIECE),
    `design: post
title: Post on a sill
wood: white ash
piece: [300, thick, 300]
dimensions:
  thick: 26 from 10 to 36; Thickness
  cutter: 8 from 6 to 14; Width of the mortises
boards:
  sill: { grain: left-right, face: front, bottom: piece, wide: 60, like: piece }
  post: { grain: up, face: front, left: piece, wide: 60, like: piece, top: piece, bottom: top of sill }
joints:
  post to sill: { tenons: 1, cutter: cutter }
`,
  ),
);

test('a piece tells its ranges, asks nothing twice, is the same from shares, and a plan takes them for that piece alone', async () => {
  const asked = ['range', PIECE, '--thick', '24'];
  const { status, out } = await line(...asked);
  expect(status).toBe(0);
  expect(out).toContain('thick');
  expect(out).toContain('designs were judged in full');
  const ranges = read('out/post-range/ranges.json');
  const verdicts = read('out/post-range.verdicts');
  // a wall of 3 mm on either side of the mortise: 14 with a cutter of 8
  const thick = JSON.parse(ranges).alone.find(
    ({ dimension }: { dimension: { name: string } }) => dimension.name === 'thick',
  );
  expect(thick.below).toMatchObject({ sound: false, code: 'wall-thin' });
  expect(thick.span.from).toBe(14);
  expect(thick.span.from - thick.below.value).toBeCloseTo(0.5, 9);
  expect(verdicts.trim().split('\n').length).toBe(JSON.parse(ranges).tried + 1);

  // one worker comes to the same as two
  const again = [...asked, '--workers', '1', '--quiet'];
  await line(...again);
  expect(read('out/post-range.verdicts')).toBe(verdicts);
  for (const part of ['1/2', '2/2']) await line(...again, '--share', part, '--out', 'apart');
  const joined = 'apart/post-range-1-of-2.verdicts,apart/post-range-2-of-2.verdicts';
  await line(...again, '--join', joined, '--out', 'apart');
  expect(read('apart/post-range/ranges.json')).toBe(ranges);
  expect(read('apart/post-range.verdicts')).toBe('');

  const made = ['make', PIECE, '--only', 'page', '--quiet', '--ranges', 'out/post-range/ranges.json'];
  expect((await line(...made, '--thick', '24')).status).toBe(0);
  expect(JSON.parse(read('out/post/summary.json')).ranges.tried).toBe(JSON.parse(ranges).tried);
  expect(read('out/post/preview.html')).toContain(
    '<summary>Dimensions you may change, and how far</summary>',
  );
  const another = await line(...made, '--thick', '25');
  expect([another.status, another.err]).toEqual([2, expect.stringContaining('found for other values')]);
});

test('a model written in code is judged by the workers too', async () => {
  // more shares than dimensions: the last judges the frame as it is and nothing else
  const { status } = await line(
    'range',
    'frame',
    '--thickness',
    '30',
    '--share',
    '99/99',
    '--workers',
    '1',
    '--quiet',
  );
  expect(status).toBe(0);
  expect(read('out/frame-range-99-of-99.verdicts').trim().split('\n')).toEqual([
    expect.stringContaining('"sound":true'),
  ]);
});

test('the script that judges names its program by content, so a verdict of another program is asked anew', async () => {
  const script = readFileSync('dist/src/cli/ranges/judge-worker.js', 'utf8');
  const name = /packed\/([0-9a-f]{8})\.js/.exec(script)![1]!;
  const program = readFileSync(`dist/src/packed/${name}.program.js`);
  expect(createHash('sha256').update(program).digest('hex').slice(0, 8)).toBe(name);

  // the run of the first test
  const verdicts = read('out/post-range.verdicts');
  const { about } = JSON.parse(read('out/post-range/ranges.json'));
  const key = (program: string) =>
    createHash('sha256').update(`${about} ${program}\n[]`).digest('hex').slice(0, 24);
  expect(verdicts.startsWith(`${key(script)} `)).toBe(true);
  expect(verdicts).not.toContain(key(script.replace(name, '00000000')));
});

test.each([
  [['--across', 'heigth,width'], "names 'heigth'"],
  [['--across', 'width'], 'name two different dimensions'],
  [['--share', '9/8'], 'from 1/8 to 8/8'],
  [['--join', 'nowhere.verdicts'], 'nowhere.verdicts cannot be read'],
])('what cannot be used is told before any design is judged: %j', async (options, text) => {
  const { status, err } = await line('range', 'frame', ...options);
  expect([status, err]).toEqual([2, expect.stringContaining(text)]);
});
