import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { builtInShop, toolsOf } from '../../src/shop/index.js';
import { atDesk } from './desk.js';

const shipped = fileURLToPath(new URL('../../pieces/', import.meta.url));
const cwd = mkdtempSync(path.join(tmpdir(), 'tenonwright-pieces-'));
afterAll(() => rmSync(cwd, { recursive: true, force: true }));

const write = (name: string, text: string) => writeFileSync(path.join(cwd, name), text);

beforeAll(async () => {
  expect((await atDesk(['new', 'garden-shelf'], { cwd })).status).toBe(0);
  write('shop.yaml', 'router:\n  plunge: 60\n');
  write('values.yaml', 'width: 700\n');
  write('half.yaml', 'design: half\nboards:\n  side: { grain: upwards }\n');
  write('code.mjs', 'throw new Error("run");\n');
});

test('new writes a piece that can be made at once, and never over a file that is there', async () => {
  const text = readFileSync(path.join(cwd, 'garden-shelf.yaml'), 'utf8');
  expect(text).toMatch(/^# yaml-language-server: \$schema=.*piece\.schema\.json\n/);
  const again = await atDesk(['new', 'garden-shelf.yaml'], { cwd });
  expect(again.status).toBe(2);
  expect(again.err).toMatch(/garden-shelf\.yaml is there already, and nothing is written over it/);
  expect(readFileSync(path.join(cwd, 'garden-shelf.yaml'), 'utf8')).toBe(text);
  for (const name of ['Garden Shelf', '../shelf', '-x', 'a--b', 'shelf.yaml.yaml']) {
    const ran = await atDesk(['new', '--', name], { cwd });
    expect([name, ran.status]).toEqual([name, 2]);
  }
  expect((await atDesk(['new'], { cwd })).err).toMatch(/new needs a name right after it/);
  expect(readdirSync(cwd).filter((file) => file.includes('shelf'))).toEqual(['garden-shelf.yaml']);
});

test('list shows the pieces that come with the program and those of this folder, told apart from other files', async () => {
  const { out, status } = await atDesk(['list'], { cwd, columns: 200 });
  expect(status).toBe(0);
  const [known, own] = out.split('\nPieces in this folder\n');
  for (const file of readdirSync(shipped))
    expect(known).toMatch(new RegExp(`^${file.replace('.yaml', '')} `, 'm'));
  expect(
    own!
      .trim()
      .split('\n')
      .map((line) => line.replace(/ {2,}/g, '|')),
  ).toEqual([
    'garden-shelf.yaml|Garden shelf|A piece told in garden-shelf.yaml.',
    'half.yaml|has mistakes: tenonwright check half.yaml tells them',
  ]);
});

test('a piece is named by its file, or by its name when it comes with the program; its dimensions are options', async () => {
  for (const subject of ['garden-shelf.yaml', path.join(cwd, 'garden-shelf.yaml')]) {
    const { asked, status } = await atDesk(['make', subject, '--width', '70cm', '--shelves', '1'], { cwd });
    expect(status).toBe(0);
    const [[, request]] = asked as [(typeof asked)[number]];
    expect(request.values).toMatchObject({ width: 700, shelves: 1 });
    expect(request.given).toEqual(['width', 'shelves']);
    const ids = request.model
      .build(request.values, toolsOf(builtInShop('mm')))
      .boards.map(({ board }) => board.id);
    expect(ids).toEqual(['left-side', 'right-side', 'bottom-board', 'top-board', 'shelf-1', 'rail']);
    expect(JSON.stringify(request.model)).not.toContain(cwd);
  }
  const inches = await atDesk(['describe', 'garden-shelf.yaml', '--units', 'in'], { cwd, columns: 100 });
  expect(inches.out).toMatch(/^--board +0\.8661" +0\.7087" to 1\.1811" +Thickness of every board$/m);
  expect((await atDesk(['check', 'side-table', '--set-back', '4'], { cwd })).status).toBe(0);
  const refused = await atDesk(['check', 'garden-shelf.yaml', '--widht', '700'], { cwd });
  expect(refused.err).toMatch(/no option --widht: did you mean --width\?/);
});

test('what is wrong is told by line, with status 2', async () => {
  const half = await atDesk(['check', 'half.yaml'], { cwd });
  expect(half.status).toBe(2);
  expect(half.err).toMatch(/^tenonwright: half\.yaml, line 1, column 1: the piece does not say its 'wood'/);
  const lower = ['--height', '500', '--shelves', '3'];
  const must = await atDesk(['describe', 'garden-shelf.yaml', ...lower], { cwd });
  expect(must.status).toBe(2);
  expect(must.err).toMatch(
    /garden-shelf\.yaml, line \d+, column 5: .* is 92 mm, and must be at least 120 mm: take fewer shelves or more height\n/,
  );
  expect(must.err).toMatch(/^tenonwright: {7}\^+$/m);
  const taken = readFileSync(path.join(cwd, 'garden-shelf.yaml'), 'utf8').replaceAll('depth', 'out');
  write('taken.yaml', taken);
  expect((await atDesk(['check', 'taken.yaml'], { cwd })).err).toMatch(
    /taken\.yaml, line 16, column 3: --out is an option of the program already: choose another name/,
  );
  rmSync(path.join(cwd, 'taken.yaml'));
});

test.each([
  [['check', 'nothing.yaml'], /nothing\.yaml cannot be read \(ENOENT\)/],
  [['check', '.yaml'], /no model '\.yaml'|\.yaml cannot be read/],
  [['check', 'garden-shelf'], /no model 'garden-shelf': did you mean the file garden-shelf\.yaml\?/],
  [['check', 'side-tabel'], /no model 'side-tabel': did you mean side-table\?/],
  [['check', 'shop.yaml'], /shop\.yaml, line 1, column 1: a piece has no 'router'/],
  [['check', 'code.mjs'], /no model 'code\.mjs'/],
  [['explain', 'small'], /small is told in code, and only a piece told in a file can be said back/],
])('%j is refused', async (argv, message) => {
  const ran = await atDesk(argv, { cwd });
  expect(ran.status).toBe(2);
  expect(ran.err).toMatch(message);
});

test('two boards joined by two lines are told at the second', async () => {
  const end = ', grain: left-right, face: up, thick: 30, like: piece }';
  write(
    'twice.yaml',
    `design: twice\nwood: white ash\npiece: [600, 100, 30]\nboards:\n  plank: { left: piece, right: 300 short of piece${end}\n  end plank: { left: 300 short of piece, right: piece${end}\njoints:\n  plank to end plank:\n  end plank to plank:\n`,
  );
  const { err, status } = await atDesk(['check', 'twice.yaml'], { cwd });
  expect(status).toBe(2);
  expect(err).toMatch(
    /twice\.yaml, line 9, .* joins end-plank and plank in the same place already: leave one/s,
  );
});

test('explain says back each board with its lines and what they come to, and draws it', async () => {
  const { out, status } = await atDesk(['explain', 'garden-shelf.yaml', '--depth', '300'], {
    cwd,
    columns: 120,
  });
  expect(status).toBe(0);
  expect(out).toMatch(/^ {2}piece, front to back: depth +depth is 300 mm$/m);
  expect(out).toMatch(
    /^side, line 28: left side, right side\n {2}800\.0 mm long, 300\.0 mm wide, 22\.0 mm thick, white ash; from left 0\.0 mm/m,
  );
  expect(out).toMatch(/^ {2}front: 5 short of side +5\.0 mm from the front of the piece$/m);
  expect(out).toMatch(
    /^ {2}back: board short of side +278\.0 mm from the front of the piece; board is 22 mm$/m,
  );
  expect(out).toMatch(/^ {2}rail\/left-side +1 × tenon /m);
  const svg = readFileSync(path.join(cwd, 'out/garden-shelf.explained.svg'), 'utf8');
  // equal boards share a row
  for (const name of ['left side', 'shelf 1', 'rail']) expect(svg).toMatch(new RegExp(`(>|, )${name}(<|, )`));
  const table = await atDesk(['explain', 'side-table'], { cwd, columns: 120 });
  expect(table.out).toMatch(
    /^ {2}taper: \{ sides: right and back, .* +foot is 26 mm; apron \+ 15 is 105 mm/m,
  );
  // here 'leg' is a place, though a dimension is called so too
  expect(table.out).toMatch(/^ {2}top: leg +580\.0 mm above the floor$/m);
  expect(existsSync(path.join(cwd, 'out/side-table.explained.svg'))).toBe(true);
});
