import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, test } from 'vitest';
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

test('a frame tells its ranges, asks nothing twice, is the same from shares, and a plan takes them for that frame alone', async () => {
  const asked = ['range', 'frame', '--thickness', '30', '--width', '210'];
  const { status, out } = await line(...asked);
  expect(status).toBe(0);
  expect(out).toContain('thickness');
  expect(out).toContain('designs were judged in full');
  const ranges = read('out/frame-range/ranges.json');
  const verdicts = read('out/frame-range.verdicts');
  // a width below twice the rails leaves no opening: that ends the rails' range
  const rail = JSON.parse(ranges).alone.find(
    ({ dimension }: { dimension: { name: string } }) => dimension.name === 'railWidth',
  );
  expect(rail.above).toMatchObject({ sound: false });
  expect(rail.above.value - rail.span.to).toBeCloseTo(0.5, 9);
  expect(verdicts.trim().split('\n').length).toBe(JSON.parse(ranges).tried + 1);

  await line(...asked, '--quiet');
  expect(read('out/frame-range.verdicts')).toBe(verdicts);
  for (const part of ['1/2', '2/2']) await line(...asked, '--share', part, '--out', 'apart', '--quiet');
  const joined = 'apart/frame-range-1-of-2.verdicts,apart/frame-range-2-of-2.verdicts';
  await line(...asked, '--join', joined, '--out', 'apart', '--quiet');
  expect(read('apart/frame-range/ranges.json')).toBe(ranges);
  expect(read('apart/frame-range.verdicts')).toBe('');

  const made = ['make', 'frame', '--only', 'page', '--quiet', '--ranges', 'out/frame-range/ranges.json'];
  expect((await line(...made, '--thickness', '30', '--width', '210')).status).toBe(0);
  expect(JSON.parse(read('out/frame/summary.json')).ranges.tried).toBe(JSON.parse(ranges).tried);
  expect(read('out/frame/preview.html')).toContain(
    '<summary>Dimensions you may change, and how far</summary>',
  );
  const another = await line(...made, '--thickness', '31', '--width', '210');
  expect([another.status, another.err]).toEqual([2, expect.stringContaining('found for other values')]);
});

test('the script that judges names its program by content, so a verdict of another program is asked anew', async () => {
  const script = readFileSync('dist/src/cli/ranges/judge-worker.js', 'utf8');
  const name = /packed\/([0-9a-f]{8})\.js/.exec(script)![1]!;
  const program = readFileSync(`dist/src/packed/${name}.program.js`);
  expect(createHash('sha256').update(program).digest('hex').slice(0, 8)).toBe(name);

  // the run of the test above
  const verdicts = read('out/frame-range.verdicts');
  const { about } = JSON.parse(read('out/frame-range/ranges.json'));
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
