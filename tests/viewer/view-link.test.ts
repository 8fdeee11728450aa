import { expect, test } from 'vitest';
import { linkTo, readLink, type View } from '../../src/viewer/controls/view-link.js';
import { AT_FIRST } from '../../src/viewer/over/choices.js';
import type { PreviewData } from '../../src/viewer/told/preview-data.js';

const piece = (id: string) => ({
  id,
  name: id,
  role: 'board' as const,
  colour: '#000000',
  note: '',
  positions: '',
  triangles: '',
  edges: '',
  wide: false,
  apart: [0, 0, 0] as const,
});

const side = { name: 'width', mm: 1, along: [1, 0, 0], mmText: '', inchText: '' } as const;
const move = { text: '', moving: [], direction: [0, 0, 1], back: 1 } as const;

const DATA: PreviewData = {
  title: 'potting shed bench',
  revision: 'r1',
  units: 'mm',
  box: { corner: [0, 0, 0], sides: [side, side, side] },
  pieces: [piece('tread'), piece('rail/left,1')],
  joints: [],
  first: [move],
  steps: [move, move],
  findings: [],
  cautions: [],
};

const VIEW: View = {
  seen: { eye: [100.5, -900, 40], target: [0, 0, 12.25], flat: true },
  choices: {
    apart: 0.25,
    step: 2,
    along: 0.5,
    axis: 1,
    cut: 0.375,
    seeThrough: true,
    sizes: false,
    stands: true,
    chosen: new Set(['rail/left,1']),
    hidden: new Set(['tread']),
  },
};

test('a link brings back all that was seen, names with commas as well', () => {
  expect(readLink(linkTo(VIEW, DATA), DATA)).toEqual(VIEW);
  const { apart, step, along, axis, cut, seeThrough, sizes, stands, chosen, hidden } = AT_FIRST;
  const plain: View = {
    seen: { eye: [1, -2, 3], target: [0, 0, 0], flat: false },
    choices: { apart, step, along, axis, cut, seeThrough, sizes, stands, chosen, hidden },
  };
  expect(readLink(linkTo(plain, DATA), DATA)).toEqual(plain);
  expect(linkTo(plain, DATA)).toBe('revision=r1&eye=1,-2,3&at=0,0,0');
});

const base = 'revision=r1&eye=1,-2,3&at=0,0,0';

test.each([
  ['x', 'it holds "x", which no link of this page does'],
  ['<img src=x onerror=alert(1)>', 'it holds "<img src=x onerror=alert…", which no link of this page does'],
  [`${base}&__proto__=1`, 'it holds "__proto__=1", which no link of this page does'],
  [`${base}&eye=1,2,3`, 'it holds "eye=1,2,3", which no link of this page does'],
  ['eye=1,-2,3&at=0,0,0', 'it was made for revision (none) of the design, and this page shows r1'],
  [base.replace('r1', 'r0'), 'it was made for revision r0 of the design, and this page shows r1'],
  [base.replace('1,-2,3', '1,-2'), 'its "eye" is "1,-2", which is no place on this page'],
  [base.replace('1,-2,3', '1,-2,NaN'), 'its "eye" is "1,-2,NaN", which is no place on this page'],
  [base.replace('1,-2,3', '1,-2,1e9'), 'its "eye" is "1,-2,1e9", which is no place on this page'],
  [base.replace('1,-2,3', '0,0,0'), 'its eye stands where it looks'],
  [`${base}&apart=7`, 'its "apart" is "7", which is no place on this page'],
  [`${base}&step=3,1`, 'its "step" is "3,1", which is no place on this page'],
  [`${base}&step=0.5,1`, 'its "step" is no whole number'],
  [`${base}&cut=3,0.5`, 'its "cut" is "3,0.5", which is no place on this page'],
  [`${base}&see=walls`, 'it asks to see "walls"'],
  [`${base}&chosen=door`, 'it names "door", which is no part of this piece'],
  [`${base}&hidden=%E0%A4%A`, 'it is not written as a link of this page is'],
])('a hostile or stale link is refused in plain words: %s', (fragment, why) => {
  expect(readLink(fragment, DATA)).toBe(`The link was not followed: ${why}.`);
});
