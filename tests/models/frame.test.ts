import { expect, test } from 'vitest';
import frame from '../../models/frame.js';
import { InputError } from '../../src/errors.js';
import { speaker } from '../../src/length/index.js';
import { readParameters } from '../../src/model/index.js';
import { box } from '../../src/solid/index.js';
import { findings, onSolids } from '../checks/sample-design.js';

const built = (raw: Readonly<Record<string, string | number>> = {}) =>
  frame.build(readParameters(frame, raw, 'mm'));

test('a frame is as long, wide and thick as asked, with four joints and nothing to report', async () => {
  const design = built();
  await onSolids(design, (solids) => {
    const boxes = [...solids.boards.values()].map(({ body }) => box(body));
    const size = [0, 1, 2].map(
      (i) => Math.max(...boxes.map(({ max }) => max[i]!)) - Math.min(...boxes.map(({ min }) => min[i]!)),
    );
    expect(size).toEqual([600, 400, 24].map((n) => expect.closeTo(n, 6)));
  });
  expect(design.joints).toHaveLength(4);
  // 70 × 24 where a rail's end meets the other's edge
  for (const joint of design.joints) expect(joint.contactAreaMm2).toBeCloseTo(70 * 24, 3);
  expect(await findings(design)).toEqual([]);
});

test('tenons are shared out as asked', () => {
  for (const joint of built({ tenons: 2, railWidth: 120 }).joints) expect(joint.tenons).toHaveLength(2);
});

test('a frame without an opening is refused, in the units of the person', () => {
  const width = 200;
  expect(() => built({ width, railWidth: 76.2 })).toThrow(InputError);
  try {
    built({ width, railWidth: 76.2 });
  } catch (error) {
    expect((error as InputError).message).toBe(
      'width 200 mm with rail-width 76.2 mm leaves 47.6 mm between the rails; it must leave at least 50 mm: make the frame larger or the rails narrower',
    );
    expect((error as InputError).explain(speaker('in'))).toContain('with rail-width 3" leaves 1.874"');
  }
});
