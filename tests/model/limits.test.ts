import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import frame from '../../models/frame.js';
import stool from '../../models/stool.js';
import { TenonwrightError } from '../../src/errors.js';
import { limitsOf, type Model, readParameters } from '../../src/model/index.js';
import { atDesk } from '../cli/desk.js';

/** The limits of one size, or of all. */
const limits = (model: unknown, raw: Readonly<Record<string, unknown>>, size?: string) => {
  const of = model as Model;
  const asked = size === undefined ? of : { ...of, parameters: of.parameters.pick({ [size]: true }) };
  return limitsOf(asked, readParameters(of, raw, 'mm'));
};

test('rails of a frame 400 wide may be 175 wide, and a frame of rails 90 wide must be 230', () => {
  // 50 stays open between two rails: (400 − 50) / 2, and 2 · 90 + 50
  expect(limits(frame, { width: 400 }, 'railWidth').get('railWidth')).toEqual({ least: 40, most: 175 });
  const wide = limits(frame, { railWidth: 90 });
  expect(wide.get('length')!.least).toBe(230);
  expect(wide.get('width')!.least).toBe(230);
});

test('a size left out follows and limits nothing: one that is given does', () => {
  expect(limits(frame, {}, 'railWidth').get('railWidth')!.most).toBe(200);
  // its underside is at 202 and a stretcher 70 wide may touch it: 132
  const given = { height: 230, treadThickness: 28, stretcherWidth: 70, treadTenons: 1 };
  expect(limits(stool, given, 'stretcherHeight').get('stretcherHeight')!.most).toBeLessThanOrEqual(132);
  expect(limits(stool, { stretcherWidth: 70 }, 'stretcherHeight').get('stretcherHeight')!.most).toBe(500);
});

test('both ends of every limit can be put together, and a step beyond cannot', () => {
  const raw = { height: 230, rake: 15, archRadius: 40 };
  for (const [name, { least, most }] of limits(stool, raw)) {
    const { min, max } = stool.parameters.shape[name as keyof typeof stool.parameters.shape].meta() as {
      min: number;
      max: number;
    };
    const built = (value: number) => {
      try {
        stool.build(readParameters(stool, { ...raw, [name]: value }, 'mm'));
        return true;
      } catch (error) {
        if (error instanceof TenonwrightError) return false;
        throw error;
      }
    };
    expect(built(least) && built(most), name).toBe(true);
    if (least > min) expect(built(least - 0.2), name).toBe(false);
    if (most < max) expect(built(most + 0.2), name).toBe(false);
  }
});

test('described with a size, every other tells the range it has beside it', async () => {
  const models = fileURLToPath(new URL('../../models/', import.meta.url));
  const { status, out } = await atDesk(['describe', 'frame', '--rail-width', '90', '--width', '400'], {
    modelsFolder: models,
  });
  expect(status).toBe(0);
  expect(out).toContain('40 mm to 175 mm');
  expect(out).toContain('230 mm to 2400 mm');
});
