import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, test } from 'vitest';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import { previewPage } from '../../src/files/page/preview-page.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { type MakeRequest, makeDesign } from '../../src/node/index.js';
import { builtInShop, paragraph, strong, table } from '../../src/shop/index.js';
import type { PreviewData } from '../../src/viewer/index.js';

const side = (name: string) => ({
  name,
  mm: 1,
  along: [1, 0, 0] as const,
  mmText: '1.0 mm',
  inchText: '3/64"',
});

const DATA: PreviewData = {
  title: 'a <b>stool</b> & "more" </script><script>alert(1)</script>',
  revision: 'r1',
  units: 'mm',
  box: { corner: [0, 0, 0], sides: [side('width'), side('depth'), side('height')] },
  pieces: [],
  joints: [],
  first: [],
  steps: [],
  findings: [
    {
      level: 'error',
      text: 'wall <1 mm',
      remedy: 'move it',
      basis: 'common practice, no source',
      pieces: ['a"b'],
      at: [0, 0, 0],
      round: 45,
    },
  ],
  cautions: ['mind <your> fingers'],
};

test('no word of a design can break out of its place in the page', () => {
  const page = previewPage(DATA, 'run("</script>")', '<svg></svg>', [
    { title: 'Set <i>up</i>', blocks: [paragraph('Ash <b>one</b>'), table(['a<b>'], [[strong('"c" <d>')]])] },
  ]);
  expect(page.match(/<script/g)).toHaveLength(2);
  expect(page.match(/<\/script>/g)).toHaveLength(2);
  expect(page).not.toContain('<b>stool');
  expect(page).toContain('wall &lt;1 mm');
  expect(page).toContain('mind &lt;your&gt; fingers');
  expect(page).toContain('<summary>Set &lt;i&gt;up&lt;/i&gt;</summary><p>Ash &lt;b&gt;one&lt;/b&gt;</p>');
  expect(page).toContain('<th>a&lt;b&gt;</th>');
  expect(page).toContain('<td><strong>&quot;c&quot; &lt;d&gt;</strong></td>');
  const json = /<script id="design" type="application\/json">(.*?)<\/script>/s.exec(page)![1]!;
  expect(JSON.parse(json)).toEqual(DATA);
});

test('the page lets nothing be loaded and names no other address but that of the SVG language', () => {
  const page = previewPage(DATA, '', '<svg xmlns="http://www.w3.org/2000/svg"></svg>', []);
  expect(page).toContain("default-src 'none'");
  expect([...page.matchAll(/https?:[^"' ]*/g)].map(([address]) => address)).toEqual([
    'http://www.w3.org/2000/svg',
  ]);
  expect(page).not.toMatch(/\b(src|href)="(?!data:)/);
});

const out = mkdtempSync(path.join(tmpdir(), 'tenonwright-page-'));
afterAll(() => rmSync(out, { recursive: true, force: true }));

const request = (values: Record<string, string>, below: string): MakeRequest => ({
  model: stool as unknown as Model,
  values: readParameters(stool as unknown as Model, values, 'mm'),
  shop: builtInShop('mm'),
  jig: jig.build(readParameters(jig, {}, 'mm')),
  units: 'mm',
  out: path.join(out, below),
  only: ['page', 'dxf'],
  format: 'binary',
  curves: 'arcs',
  force: false,
  version: '0.0.0',
  progress: () => {},
});

const papersIn = (below: string, design: string): readonly string[] =>
  [
    ...readFileSync(path.join(out, below, design, 'preview.html'), 'utf8').matchAll(
      /<details class="paper"><summary>([^<]*)</g,
    ),
  ].map(([, title]) => title!);

test('a design that failed has its page and tells there what is wrong, though its templates are held back', async () => {
  const { files, heldBack, findings, design } = await makeDesign(
    request({ cutter: '14', stretcherThickness: '15' }, 'failed'),
  );
  expect(findings.some(({ level }) => level === 'error')).toBe(true);
  expect(files.map((file) => path.basename(file.path))).toEqual(['preview.html', 'summary.json']);
  expect(heldBack.length).toBeGreaterThan(0);
  expect(existsSync(path.join(out, 'failed', design.name, 'preview.html'))).toBe(true);
  // the papers of the bench are cut from, so they are held back too; what it bears is for looking
  expect(papersIn('failed', design.name)).toEqual(['What it bears']);
});

test('the same stool is the same page to the last byte, and smaller than a million', async () => {
  const page = async (below: string) =>
    (await makeDesign(request({}, below))).files.find((file) => file.path.endsWith('preview.html'))!;
  const [one, other] = [await page('one'), await page('other')];
  expect(other.sha256).toBe(one.sha256);
  expect(one.bytes).toBeLessThan(1_000_000);
  expect(papersIn('one', 'stool')).toEqual(['What it bears', 'Set-up cards', 'Order of work', 'Glue-up']);
});
