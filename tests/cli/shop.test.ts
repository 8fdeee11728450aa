import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { bounds } from '../../src/profile/index.js';
import { builtInShop } from '../../src/shop/index.js';
import { atDesk } from './desk.js';

/** A shop file in a folder of its own; the folder. */
const folderWith = (text: string): string => {
  const folder = mkdtempSync(path.join(tmpdir(), 'shop-'));
  writeFileSync(path.join(folder, 'shop.yaml'), text);
  return folder;
};

const ROUTER = 'router: { base: { along: 160 } }\n';

test('shop --example prints a file that make takes, and it is the built-in shop', async () => {
  const { status, out } = await atDesk(['shop', '--example']);
  expect(status).toBe(0);
  const ran = await atDesk(['check', 'small', '--shop', 'shop.yaml'], { cwd: folderWith(out) });
  expect(ran.err).not.toContain('tenonwright:');
  expect(ran.asked[0]![1].shop).toEqual({ ...builtInShop('mm'), name: 'shop.yaml' });
});

test('without a shop file the built-in shop is used, and is called that', async () => {
  const ran = await atDesk(['make', 'small', '--units', 'in']);
  expect(ran.asked[0]![1].shop).toEqual(builtInShop('in'));
  expect(ran.asked[0]![1].shop.name).toBe('built-in shop');
});

test('the jig at hand is built from the parameters in the shop file, in the units of the file', async () => {
  const cwd = folderWith(`units: in\nrouter: { base: { along: 6 } }\njig: { plate-thickness: 3/8 }\n`);
  const ran = await atDesk(['check', 'small', '--shop', 'shop.yaml'], { cwd });
  const plate = ran.asked[0]![1].jig.boards.find(({ board }) => board.id === 'plate');
  expect(plate?.board.blank.thickness).toBe(9.525);
});

test.each([
  ['{ along: 160 }', { along: 160, across: 160 }],
  ['{ shape: rectangle, along: 160, across: 120 }', { along: 160, across: 120 }],
  // 60 to the flat towards the person, 80 to the round edge
  ['{ shape: round with flats, along: 160, flats: { near: 60 } }', { along: 160, across: 140 }],
  ['{ shape: round with flats, along: 160, flats: { far: 61, sides: 70 } }', { along: 140, across: 141 }],
])('the jig is made for the router base of the shop file: %s', async (base, sizes) => {
  const ran = await atDesk(['check', 'small', '--shop', 'shop.yaml'], {
    cwd: folderWith(`units: in\nrouter: { base: ${base.replace(/(\d+)/g, '$1 mm')} }\n`),
  });
  expect(ran.err).not.toContain('tenonwright:');
  const drawn = ran.asked[0]![1].jig.hardware.find(({ kind }) => kind === 'router base')!;
  const { minX, maxX, minY, maxY } = bounds(drawn.stages[0]!.outline);
  expect(maxX - minX).toBeCloseTo(sizes.along, 6);
  expect(maxY - minY).toBeCloseTo(sizes.across, 6);
});

test('shop --shop prints the file back as it was understood, with what it leaves out as comments', async () => {
  const ran = await atDesk(['shop', '--shop', 'shop.yaml'], {
    cwd: folderWith(`${ROUTER}saw-kerf: 1/8 in\n`),
  });
  expect(ran.status).toBe(0);
  expect(ran.out).toMatch(/^saw-kerf: 3\.175 mm$/m);
  expect(ran.out).toMatch(/^ {2}# plunge-travel:$/m);
});

test.each([
  [`${ROUTER}cuters: []`, /shop\.yaml: there is no 'cuters' here: did you mean cutters\?/],
  [
    `${ROUTER}jig: { plate-thicknes: 9 }`,
    /shop\.yaml: jig: jig has no parameter 'plateThicknes': did you mean plate-thickness\?/,
  ],
  [`${ROUTER}jig: { plate-thickness: 90 }`, /shop\.yaml: jig: plate-thickness is 90 mm; it must be/],
  ['cutters: [', /shop\.yaml is not YAML/],
  ['- 3', /shop\.yaml: holds a list/],
])('%j ends with status 2 and says where', async (text, message) => {
  const ran = await atDesk(['make', 'small', '--shop', 'shop.yaml'], { cwd: folderWith(text) });
  expect(ran.err).toMatch(message);
  expect(ran.status).toBe(2);
  expect(ran.asked).toEqual([]);
});

test.each([
  [['shop'], /shop needs --example/],
  [['shop', '--example', '--shop', 'x.yaml'], /not both/],
  [['shop', '--shop', 'nowhere.yaml'], /nowhere\.yaml cannot be read \(ENOENT\)/],
  [['make', 'small', '--shop', 'nowhere.yaml'], /nowhere\.yaml cannot be read/],
])('%j is refused', async (argv, message) => {
  const ran = await atDesk(argv);
  expect(ran.err).toMatch(message);
  expect(ran.status).toBe(2);
});
