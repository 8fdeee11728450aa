import { expect, test } from 'vitest';
import { previewVerdict } from '../../src/files/page/preview-verdict.js';

const of = (...levels: ('error' | 'warning' | 'note')[]) =>
  previewVerdict(levels.map((level) => ({ level })));

test('the badge counts errors and warnings, the worst first; notes change nothing', () => {
  expect(of()).toEqual({ level: 'sound', text: 'checks passed' });
  expect(of('note', 'note')).toEqual({ level: 'sound', text: 'checks passed' });
  expect(of('warning')).toEqual({ level: 'warning', text: '1 warning' });
  expect(of('note', 'warning', 'error', 'warning')).toEqual({ level: 'error', text: '1 error, 2 warnings' });
  expect(of('error', 'error')).toEqual({ level: 'error', text: '2 errors' });
});
