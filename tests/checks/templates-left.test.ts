import { describe, expect, test } from 'vitest';
import { makeBoard, templateOutline } from '../../src/board/index.js';
import { benchOf } from '../../src/checks/index.js';
import { templatesLeft } from '../../src/checks/shop/templates-left.js';
import { WORLD } from '../../src/frame/index.js';
import { speaker } from '../../src/length/index.js';
import { area } from '../../src/profile/index.js';
import { solidsOf, startKernel } from '../../src/solid/index.js';
import { stoolWith } from '../shop/designs.js';

const kernel = await startKernel();
const narrow = makeBoard({ id: 'slat', blank: { length: 300, width: 40, thickness: 20 } });

const look = (bush?: number) => {
  const design = { ...stoolWith(), boards: [{ board: narrow, place: WORLD }], joints: [], cutter: 8 };
  return templatesLeft(benchOf(solidsOf(kernel, design), speaker('mm'), bush));
};

describe('a guide bush', () => {
  test('leaves a slat of 40 a template as long as it stands less than 20 inside: (bush - 8) / 2', () => {
    expect(look(47.9)).toEqual([]);
    expect(look(48.1)).toHaveLength(1);
    expect(look()).toEqual([]);
    // what is left shrinks by the stand-off on every side
    const [line] = templateOutline(narrow, { cutter: 8, bush: 24 });
    expect(area(line!)).toBeCloseTo((300 - 16) * (40 - 16), 6);
  });

  test('too large is told with one that works', () => {
    const [finding] = look(60);
    expect(finding).toMatchObject({ code: 'template-vanishes', level: 'warning', subjects: ['slat'] });
    const named = Number(/--bush (\d+)mm/.exec(finding!.remedy)![1]);
    expect(named).toBe(finding!.limit);
    expect(look(named)).toEqual([]);
  });
});
