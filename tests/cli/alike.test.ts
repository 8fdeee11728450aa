import { expect, test } from 'vitest';
import type { Finding } from '../../src/checks/index.js';
import { printFindings } from '../../src/cli/results/print-result.js';

const loose = (tenon: string): Finding => ({
  code: 'tenon-loose',
  level: 'warning',
  subjects: [tenon, 'rail'],
  measured: 0.4,
  limit: 0.25,
  unit: 'mm',
  message: `tenon ${tenon} has 0.4 mm of air`,
  remedy: 'make the tenon thicker',
  basis: 'common practice, no source',
});

test('findings with one remedy are told together, and counted one by one', () => {
  const told = printFindings([loose('T1'), loose('T2'), { ...loose('T3'), remedy: 'plane the board' }], 200);
  expect(told).toContain('3 warnings');
  expect(told.match(/tenon-loose/g)).toHaveLength(2);
  expect(told).toContain(
    'tenon T1 has 0.4 mm of air: make the tenon thicker (and 1 more like it: T2 and rail)',
  );
});
