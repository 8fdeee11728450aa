import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import path from 'node:path';
import { expect, test } from 'vitest';

const root = path.resolve(import.meta.dirname, '..');

/** Folders of src in the order they are built on each other; `models` is the folder beside src. */
const ORDER: readonly (readonly string[])[] = [
  ['src/tolerances.ts'],
  ['src/told-apart.ts'],
  ['src/errors.ts', 'src/once.ts', 'src/remembered.ts'],
  // lengths as text and frames in space know nothing of each other
  ['length', 'frame'],
  ['tables'],
  // figures alone: they know the tables and no design
  ['statics', 'movement'],
  ['profile'],
  ['board', 'mounting'],
  ['joinery'],
  ['assembly'],
  ['model'],
  // pieces written in TypeScript, and pieces read from a file
  ['models', 'notation'],
  ['solid'],
  ['strength'],
  ['shop'],
  ['checks'],
  ['verdict'],
  ['range'],
  ['drawing'],
  // the preview page's script: knows only the data the page holds
  ['viewer'],
  ['files'],
  // the living plan's scripts, in a page and in its worker
  ['living'],
  // disk, process and the loading of code
  ['node'],
  ['cli'],
];

/** Rooms of the large folders, in the order they are built on each other; the folder's own index and its entries stand in none. */
const ROOMS: Readonly<Record<string, readonly string[]>> = {
  shop: [
    'practice',
    'words',
    'at-hand',
    'boards',
    'holding',
    'set-up',
    'order',
    'tenons',
    'glue-up',
    'clamps',
    'stock',
    'marks',
    'papers',
  ],
  checks: ['finding', 'bench', 'joints', 'boards', 'shop', 'verdict'],
  notation: ['text', 'formulas', 'dimensions', 'places', 'shapes', 'boards', 'joints', 'piece'],
  drawing: [
    'sheet',
    'view',
    'flow',
    'dimension',
    'template',
    'board',
    'printed-template',
    'figure',
    'set-up',
    'plan',
  ],
  files: [
    'folder',
    'summary',
    'made',
    'svg',
    'dxf',
    'templates',
    'solids',
    'papers',
    'plan',
    'pictures',
    'page',
    'jobs',
  ],
  viewer: ['told', 'piece', 'stage', 'over', 'controls'],
  cli: ['around', 'given', 'argv', 'results', 'ranges', 'commands'],
};

/** What is started from outside. */
const ENTRIES: readonly string[] = [
  'src/viewer/viewer.ts',
  'src/cli/bin.ts',
  'src/cli/engine.ts',
  'src/cli/run.ts',
];

const rank = (layer: string): number => ORDER.findIndex((level) => level.includes(layer));

/** Where a source file stands: its folder in src, `models`, or the two files that are everybody's. */
function layerOf(file: string): string {
  const parts = path.relative(root, file).split(path.sep);
  if (parts[0] === 'models') return 'models';
  return parts.length === 2 ? parts.join('/') : parts[1]!;
}

interface Import {
  readonly from: string;
  readonly what: string;
  /** Loaded when it is used: a heavy writer may be named by its file. */
  readonly late: boolean;
}

const sources: readonly string[] = ['src', 'models'].flatMap((folder) =>
  readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => path.join(root, folder, name)),
);

/** Source without comments, so that words about an import are not taken for one. */
const codeOf = (file: string): string =>
  readFileSync(file, 'utf8')
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/(^|\s)\/\/.*$/gm, '$1');

const imports: readonly Import[] = sources.flatMap((from) =>
  [
    ...codeOf(from).matchAll(/(?:\bfrom|\bimport)\s*\(?\s*['"]([^'"]+)['"]/g),
    ...codeOf(from).matchAll(/new URL\(\s*['"](\.[^'"]+)['"]/g),
  ].map(([whole, what]) => ({ from, what: what!, late: /import\s*\(/.test(whole) })),
);

const ours = imports
  .filter(({ what }) => what.startsWith('.') && /\.[jt]s$/.test(what))
  .map(({ from, what, late }) => ({
    from,
    to: path.resolve(path.dirname(from), what.replace(/\.js$/, '.ts')),
    late,
  }));

const shown = (from: string, what: string) =>
  `${path.relative(root, from)} imports ${path.isAbsolute(what) ? path.relative(root, what) : what}`;

test('every source file stands in a known layer, and every import of ours leads to a file', () => {
  expect(sources.filter((file) => rank(layerOf(file)) < 0).map((file) => path.relative(root, file))).toEqual(
    [],
  );
  expect(ours.length).toBeGreaterThan(sources.length);
  expect(ours.filter(({ to }) => !existsSync(to)).map(({ from, to }) => shown(from, to))).toEqual([]);
});

test('a folder imports only from folders before it', () => {
  const wrong = ours.filter(({ from, to }) => {
    const [mine, other] = [layerOf(from), layerOf(to)];
    return mine !== other && rank(other) >= rank(mine);
  });
  expect(wrong.map(({ from, to }) => shown(from, to))).toEqual([]);
});

test('a folder shows others only its index', () => {
  const wrong = ours.filter(
    ({ from, to }) =>
      layerOf(from) !== layerOf(to) && !layerOf(to).endsWith('.ts') && path.basename(to) !== 'index.ts',
  );
  expect(wrong.map(({ from, to }) => shown(from, to))).toEqual([]);
});

/** The room of a file of a large folder; undefined for the folder's own index. */
const roomOf = (file: string): string | undefined => {
  const parts = path.relative(root, file).split(path.sep);
  return parts.length > 3 ? parts[2] : undefined;
};

test('every file of a large folder stands in a room, and every room is known', () => {
  const large = sources.filter((file) => layerOf(file) in ROOMS);
  const lost = large.filter((file) => {
    const room = roomOf(file);
    return room === undefined
      ? path.basename(file) !== 'index.ts' && !ENTRIES.includes(path.relative(root, file))
      : !ROOMS[layerOf(file)]!.includes(room) || path.relative(root, file).split(path.sep).length > 4;
  });
  expect(lost.map((file) => path.relative(root, file))).toEqual([]);
  const empty = Object.entries(ROOMS).flatMap(([layer, rooms]) =>
    rooms
      .filter((room) => !large.some((file) => layerOf(file) === layer && roomOf(file) === room))
      .map((room) => `${layer}/${room}`),
  );
  expect(empty).toEqual([]);
});

test('a room imports only from rooms before it, and what is loaded at once through their index', () => {
  const between = ours.filter(
    ({ from, to }) =>
      layerOf(from) === layerOf(to) &&
      layerOf(from) in ROOMS &&
      roomOf(from) !== undefined &&
      roomOf(from) !== roomOf(to),
  );
  expect(between.length).toBeGreaterThan(100);
  const wrong = between.filter(({ from, to, late }) => {
    const order = ROOMS[layerOf(from)]!;
    const room = roomOf(to);
    return (
      room === undefined ||
      order.indexOf(room) >= order.indexOf(roomOf(from)!) ||
      (!late && path.basename(to) !== 'index.ts')
    );
  });
  expect(wrong.map(({ from, to }) => shown(from, to))).toEqual([]);
});

test('no file needs itself by way of others, types included', () => {
  const on = new Map<string, string[]>();
  for (const { from, to, late } of ours) if (!late) on.set(from, [...(on.get(from) ?? []), to]);
  const done = new Set<string>();
  const circles: string[] = [];
  const walk = (file: string, way: readonly string[]): void => {
    const at = way.indexOf(file);
    if (at >= 0) circles.push([...way.slice(at), file].map((one) => path.relative(root, one)).join(' > '));
    if (at >= 0 || done.has(file)) return;
    for (const next of on.get(file) ?? []) walk(next, [...way, file]);
    done.add(file);
  };
  for (const file of on.keys()) walk(file, []);
  expect(circles).toEqual([]);
});

test('no folder of src imports a model: the command line finds them by their files', () => {
  const wrong = ours.filter(({ from, to }) => layerOf(to) === 'models' && layerOf(from) !== 'models');
  expect(wrong.map(({ from, to }) => shown(from, to))).toEqual([]);
});

test('what a browser page must run uses nothing of Node, no clock and no chance', () => {
  const inPage = sources.filter((file) => !['node', 'cli'].includes(layerOf(file)));
  const banned =
    /\bprocess\s*[?.[]|\bBuffer\b|\bDate\.now\b|\bnew Date\b(?!\(0\))|\bMath\.random\b|\brandomUUID\b/;
  const words = inPage.flatMap((file) => {
    const found = banned.exec(codeOf(file));
    return found ? [`${path.relative(root, file)}: ${found[0]}`] : [];
  });
  const modules = imports
    .filter(({ from, what }) => inPage.includes(from) && isBuiltin(what))
    .map(({ from, what }) => shown(from, what));
  expect([...words, ...modules]).toEqual([]);
});

test('each kernel is known to one folder only', () => {
  const users = (library: string) => [
    ...new Set(imports.filter(({ what }) => what === library).map(({ from }) => layerOf(from))),
  ];
  expect(users('manifold-3d')).toEqual(['solid']);
  expect(users('clipper2-ts')).toEqual(['profile']);
});

test('the schema library is taken by its parts: under the name z it brings all its translations along', () => {
  const whole = sources.filter((file) =>
    /import (?:type )?\{[^}]*\bz\b[^}]*\} from 'zod'/.test(codeOf(file)),
  );
  expect(whole.map((file) => path.relative(root, file))).toEqual([]);
});
