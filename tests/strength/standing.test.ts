import { expect, test } from 'vitest';
import stool from '../../models/stool.js';
import type { Design } from '../../src/assembly/index.js';
import { readParameters } from '../../src/model/index.js';
import { borne, margin } from './on-solids.js';

/** The stool of the worked example: its feet stand hardly beyond its tread. */
const stoolOf = (values: Record<string, unknown> = {}): Design => ({
  ...stool.build(
    readParameters(stool, { treadLength: 420, treadDepth: 240, overhang: 30, setback: 10, ...values }, 'mm'),
  ),
  uses: [{ board: 'tread', use: 'step' }],
});

test('the feet of a stool 420 × 240 stand 5.6 mm beyond its ends and 1.0 mm beyond its front: 215.6 and 121.0 by its angles', () =>
  borne(stoolOf(), (strength) => {
    expect(margin(strength, 'room', 'left').figure).toBeCloseTo(5.6, 1);
    expect(margin(strength, 'room', 'right').figure).toBeCloseTo(5.6, 1);
    expect(margin(strength, 'room', 'front').figure).toBeCloseTo(1, 1);
    // with 4 kg of its own 27 N and 347 N; this one weighs 3.79 kg
    const { kg } = strength.asked.resting;
    const by = (own: number, inside: number) => (1471.5 * inside + own * 9.81 * 121.0) / 230;
    expect(by(4, 1.0)).toBeCloseTo(27, 0);
    expect(by(4, 51)).toBeCloseTo(347, 0);
    expect(margin(strength, 'bare', 'front').figure).toBeCloseTo(by(kg, 1.0084), 0);
    expect(margin(strength, 'wholly', 'at the front').figure).toBeCloseTo(by(kg, 51.0084), 0);
  }));
