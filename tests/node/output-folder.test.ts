import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { OutputError } from '../../src/errors.js';
import { requireOutFolder, writeFolder } from '../../src/node/output-folder.js';

let out = '';
beforeEach(() => {
  out = fs.mkdtempSync(path.join(os.tmpdir(), 'output-folder-'));
});
afterEach(() => fs.rmSync(out, { recursive: true, force: true }));

const bytes = (text: string) => new TextEncoder().encode(text);
const set = (text: string) => [
  { path: 'summary.json', bytes: bytes(`{"is": "${text}"}\n`) },
  { path: 'parts/left-side.stl', bytes: bytes(text) },
];
const read = (name: string) => fs.readFileSync(path.join(out, 'stool', name), 'utf8');
const deadPid = () => spawnSync(process.execPath, ['--eval', '']).pid;

test('a set is written with its subfolders into an output folder that did not exist', () => {
  const folder = writeFolder(path.join(out, 'deep', 'er'), 'stool', set('first'));
  expect(fs.readFileSync(path.join(folder, 'parts/left-side.stl'), 'utf8')).toBe('first');
});

test('the list of hashes is one that sha256sum checks', () => {
  const folder = writeFolder(out, 'stool', set('first'));
  const check = spawnSync('sha256sum', ['--check', '--strict', 'files.sha256'], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect(check.stdout).toBe('summary.json: OK\nparts/left-side.stl: OK\n');
});

test('a new set takes the place of the old one, and files of the old one alone are gone', () => {
  writeFolder(out, 'stool', [...set('first'), { path: 'templates/rail.mm.dxf', bytes: bytes('x') }]);
  writeFolder(out, 'stool', set('second'));
  expect(read('parts/left-side.stl')).toBe('second');
  expect(fs.readdirSync(path.join(out, 'stool')).sort()).toEqual(['files.sha256', 'parts', 'summary.json']);
  expect(fs.readdirSync(out)).toEqual(['stool']);
});

test('the same set twice is the same bytes', () => {
  writeFolder(out, 'stool', set('first'));
  const before = ['files.sha256', 'summary.json', 'parts/left-side.stl'].map(read);
  writeFolder(out, 'stool', set('first'));
  expect(['files.sha256', 'summary.json', 'parts/left-side.stl'].map(read)).toEqual(before);
});

test('a folder with a file of the person is refused, named and left as it is', () => {
  writeFolder(out, 'stool', set('first'));
  fs.writeFileSync(path.join(out, 'stool/parts/my notes.txt'), 'glue on Friday');
  expect(() => writeFolder(out, 'stool', set('second'))).toThrow(OutputError);
  expect(() => writeFolder(out, 'stool', set('second'))).toThrow(/parts\/my notes\.txt .*move .* away/);
  expect(read('parts/my notes.txt')).toBe('glue on Friday');
  expect(read('parts/left-side.stl')).toBe('first');
  expect(fs.readdirSync(out)).toEqual(['stool']);
});

test('a file of ours that the person changed is not lost', () => {
  writeFolder(out, 'stool', set('first'));
  fs.appendFileSync(path.join(out, 'stool/summary.json'), ' ');
  expect(() => writeFolder(out, 'stool', set('second'))).toThrow(/summary\.json in it was changed/);
  expect(read('summary.json')).toContain('first');
});

test('a file of ours that the person deleted is no obstacle', () => {
  writeFolder(out, 'stool', set('first'));
  fs.rmSync(path.join(out, 'stool/parts'), { recursive: true });
  writeFolder(out, 'stool', set('second'));
  expect(read('parts/left-side.stl')).toBe('second');
});

test('a folder that this tool never wrote is refused even when it holds one file of the same name', () => {
  fs.mkdirSync(path.join(out, 'stool'));
  fs.writeFileSync(path.join(out, 'stool/summary.json'), '{"files": []}');
  expect(() => writeFolder(out, 'stool', set('first'))).toThrow(/summary\.json in it was not written/);
});

test('an empty folder is used', () => {
  fs.mkdirSync(path.join(out, 'stool'));
  writeFolder(out, 'stool', set('first'));
  expect(read('parts/left-side.stl')).toBe('first');
});

test('a folder the person made inside ours is refused, also when it is empty', () => {
  writeFolder(out, 'stool', set('first'));
  fs.mkdirSync(path.join(out, 'stool/photos'));
  expect(() => writeFolder(out, 'stool', set('second'))).toThrow(/photos/);
});

test('a link in place of the folder or of a file is refused and what it points to is untouched', () => {
  const elsewhere = path.join(out, 'elsewhere');
  writeFolder(elsewhere, 'stool', set('first'));
  fs.symlinkSync(path.join(elsewhere, 'stool'), path.join(out, 'stool'));
  expect(() => writeFolder(out, 'stool', set('second'))).toThrow(/not a folder/);
  const file = path.join(elsewhere, 'stool/summary.json');
  fs.renameSync(file, path.join(elsewhere, 'kept.json'));
  fs.symlinkSync(path.join(elsewhere, 'kept.json'), file);
  expect(() => writeFolder(elsewhere, 'stool', set('second'))).toThrow(/summary\.json/);
  expect(fs.readFileSync(path.join(elsewhere, 'kept.json'), 'utf8')).toContain('first');
});

test('paths that leave the folder, or two that are one, are refused before anything is written', () => {
  const wrong = [
    '../x',
    '/etc/x',
    'a/../../x',
    'a//b',
    '',
    '.hidden',
    'a\\b',
    'C:x',
    'a\0b',
    'line\nbreak',
    'end.',
  ];
  for (const name of wrong) {
    expect(() => writeFolder(out, 'stool', [{ path: name, bytes: bytes('x') }]), name).toThrow(OutputError);
    expect(() => writeFolder(out, name, set('x')), name).toThrow(OutputError);
  }
  const both = (...paths: string[]) => paths.map((name) => ({ path: name, bytes: bytes('x') }));
  expect(() => writeFolder(out, 'stool', both('Rail.stl', 'rail.stl'))).toThrow(/overwrite each other/);
  expect(() => writeFolder(out, 'stool', both('rail', 'rail/a.stl'))).toThrow(/overwrite each other/);
  expect(() => writeFolder(out, 'stool', both('files.sha256'))).toThrow(/overwrite each other/);
  expect(fs.readdirSync(out)).toEqual([]);
});

test('an output folder that is a file is told to the person, not as a fault of the program', () => {
  fs.writeFileSync(path.join(out, 'taken'), '');
  expect(() => writeFolder(path.join(out, 'taken'), 'stool', set('x'))).toThrow(OutputError);
});

test('what a killed run left half written is cleaned up, what a living run is writing is not', () => {
  const left = path.join(out, `.stool.tenonwright-new-${deadPid()}`);
  const living = path.join(out, `.stool.tenonwright-new-${process.ppid}`);
  const other = path.join(out, `.jig.tenonwright-new-${deadPid()}`);
  for (const folder of [left, living, other]) fs.mkdirSync(folder);
  fs.writeFileSync(path.join(left, 'half.stl'), 'ha');
  writeFolder(out, 'stool', set('first'));
  expect([left, living, other].map((folder) => fs.existsSync(folder))).toEqual([false, true, true]);
});

test('a set moved aside by a run that was killed before it put the new one in place is put back', () => {
  writeFolder(out, 'stool', set('first'));
  const aside = path.join(out, `.stool.tenonwright-old-${deadPid()}`);
  fs.renameSync(path.join(out, 'stool'), aside);
  fs.writeFileSync(path.join(aside, 'summary.json'), 'changed by hand');
  expect(() => writeFolder(out, 'stool', set('second'))).toThrow(/summary\.json in it was changed/);
  expect(read('summary.json')).toBe('changed by hand');
  expect(fs.existsSync(aside)).toBe(false);
});

test('a set of which a killed run had deleted half is cleaned up', () => {
  const gone = path.join(out, `.stool.tenonwright-gone-${deadPid()}`);
  fs.mkdirSync(gone);
  fs.writeFileSync(path.join(gone, 'rail.stl'), 'without its list');
  writeFolder(out, 'stool', set('first'));
  expect(fs.readdirSync(out)).toEqual(['stool']);
});

test('a file where a folder must be is named and left as it is', () => {
  // a file stands where a folder must be: unlike a mode, that keeps root out too
  const file = path.join(out, 'note.txt');
  fs.writeFileSync(file, 'mine');
  expect(() => writeFolder(path.join(file, 'deep'), 'stool', set('x'))).toThrow(/note\.txt is not a folder/);
  expect(fs.readFileSync(file, 'utf8')).toBe('mine');
});

test('an output folder that is a file, or lies in one, is refused before there is anything to write', () => {
  const file = path.join(out, 'notes.txt');
  fs.writeFileSync(file, 'glue on Friday');
  for (const inFile of [file, path.join(file, 'deep')]) {
    expect(() => requireOutFolder(inFile, 'stool')).toThrow(/notes\.txt is not a folder/);
    expect(() => writeFolder(inFile, 'stool', set('first'))).toThrow(/notes\.txt is not a folder/);
  }
  fs.symlinkSync(path.join(out, 'nowhere'), path.join(out, 'dangling'));
  expect(() => requireOutFolder(path.join(out, 'dangling'), 'stool')).toThrow(/dangling is not a folder/);
});

test('the look ahead refuses a folder with a file of the person, and makes nothing', () => {
  requireOutFolder(path.join(out, 'deep', 'er'), 'stool');
  expect(fs.readdirSync(out)).toEqual([]);
  writeFolder(out, 'stool', set('first'));
  requireOutFolder(out, 'stool');
  fs.writeFileSync(path.join(out, 'stool/my notes.txt'), 'glue on Friday');
  expect(() => requireOutFolder(out, 'stool')).toThrow(/my notes\.txt .*move .* away/);
});

test.runIf(fs.existsSync('/proc/self'))(
  'a place where the system makes no folders is refused rather than tried for ever',
  () => {
    expect(() => writeFolder('/proc/no-such-process/out', 'stool', set('first'))).toThrow(
      /cannot be written \(the system says ENOENT.*with room left/,
    );
  },
);

test.each(['.DS_Store', 'Thumbs.db', 'parts/desktop.ini'])(
  'what a file manager leaves, like %s, is no obstacle',
  (litter) => {
    writeFolder(out, 'stool', set('first'));
    fs.writeFileSync(path.join(out, 'stool', litter), 'where the icons stand');
    requireOutFolder(out, 'stool');
    writeFolder(out, 'stool', set('second'));
    expect(read('parts/left-side.stl')).toBe('second');
  },
);

test('a folder where nothing can be made is refused before the work, and nothing is left where it can', () => {
  // not even the system's owner can make a folder there
  expect(() => requireOutFolder('/proc/sub/out', 'stool')).toThrow(
    /cannot be written.*choose an output folder/,
  );
  requireOutFolder(path.join(out, 'not', 'yet'), 'stool');
  expect(fs.readdirSync(out)).toEqual([]);
});
