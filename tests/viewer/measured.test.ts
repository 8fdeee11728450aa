import { expect, test } from 'vitest';
import { distance, measuredWords } from '../../src/viewer/over/measured.js';
import { sharpEdgesOf } from '../../src/viewer/piece/sharp-edges.js';
import type { PreviewData } from '../../src/viewer/told/preview-data.js';

const side = (name: string) => ({ name, mm: 1, along: [1, 0, 0], mmText: '', inchText: '' }) as const;

const data = (units: 'mm' | 'in'): PreviewData => ({
  title: 'potting shed bench',
  revision: 'r1',
  units,
  box: { corner: [0, 0, 0], sides: [side('width'), side('depth'), side('height')] },
  pieces: [],
  joints: [],
  first: [],
  steps: [],
  findings: [],
  cautions: [],
});

const corner = { on: 'corner', piece: 'tread', at: [0, 0, 0] } as const;

test('the way between two spots is told straight and in its three parts, in the units of the person', () => {
  const far = { on: 'edge', piece: 'rail', at: [30, -40, 120] } as const;
  // 30² + 40² + 120² = 130²
  expect(measuredWords(data('mm'), [corner, far])).toBe(
    'corner of tread to edge of rail: 130.0 mm (width 30.0 mm, depth 40.0 mm, height 120.0 mm)',
  );
  const inches = { on: 'corner', piece: 'rail', at: [3 * 25.4, 4 * 25.4, 0] } as const;
  expect(distance(data('in'), [corner, inches])).toBe('5"');
});

test('a spot of a face is measured square off its plane as well', () => {
  const face = { on: 'face', piece: 'rail', at: [50, 7, 24], normal: [0, 0, 1] } as const;
  expect(measuredWords(data('mm'), [corner, face])).toContain('; square to the face 24.0 mm');
  expect(measuredWords(data('mm'), [face, corner])).toContain('; square to the face 24.0 mm');
});

test('an edge that goes on has no corner where it is parted; one that turns has', () => {
  // an L of three points, its long leg parted in the middle
  const positions = Float32Array.from([0, 0, 0, 50, 0, 0, 100, 0, 0, 100, 40, 0]);
  const edges = sharpEdgesOf(positions, [0, 1, 1, 2, 2, 3]);
  expect(edges.map(({ fromCorner, toCorner }) => [fromCorner, toCorner])).toEqual([
    [true, false],
    [false, true],
    [true, true],
  ]);
});
