import { expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { curingJudgeOf, dimensionOf, glanceOf, judgeOf, rangesOf } from '../../src/range/index.js';
import { builtInShop } from '../../src/shop/index.js';
import { knobs, type Question } from '../../src/verdict/index.js';
import { plainJig } from '../shop/designs.js';

const frame = frameModel as unknown as Model;
const quiet = () => {};

/** A frame whose checks are the real ones, one dimension of it, and all that its range is found by. */
function asked(model: Model, name: string, given: Readonly<Record<string, string>> = {}) {
  const question: Question = { model, units: 'mm', shop: builtInShop('mm'), jig: plainJig() };
  const values = readParameters(model, given, 'mm');
  const knob = knobs(model, model.complete(values), []).find((one) => one.name === name)!;
  return {
    question,
    values,
    wanted: { dimensions: [dimensionOf(knob, 'mm')], across: undefined, together: undefined },
  };
}

test('rails too thin for their cutter in the middle of a range, and there alone, are found by the checks and told', async () => {
  // between the places that full verdicts are asked for in any case
  const [from, to] = [1120.2, 1300.3];
  const holed: Model = {
    ...frame,
    build: (values, tools) => {
      const long = Number(values.length);
      return frame.build(long > from && long < to ? { ...values, thickness: 15, cutter: 12 } : values, tools);
    },
  };
  const { question, values, wanted } = asked(holed, 'length');
  const { alone } = await rangesOf(wanted, judgeOf(question, values), glanceOf(question, values), quiet);
  const [{ span, above, again }] = alone as [(typeof alone)[0]];
  expect([span.from, span.to]).toEqual([200, 1120]);
  expect(above).toMatchObject({ value: 1120.5, code: 'wall-thin' });
  expect(again).toEqual([{ from: 1300.5, to: 2400 }]);
});

test('what is told to let a design pass beyond an end does so, by a full verdict', async () => {
  const { question, values, wanted } = asked(frame, 'thickness', { cutter: '10' });
  const judge = judgeOf(question, values);
  const curing = curingJudgeOf(question, values);
  const { alone } = await rangesOf(wanted, judge, glanceOf(question, values), quiet, curing);
  const { value, code, cure } = alone[0]!.below!;
  expect([code, (await judge({ thickness: value })).sound]).toEqual(['wall-thin', false]);
  const [, size] = /^cutter (\S+) mm$/.exec(cure!)!;
  expect((await judge({ thickness: value, cutter: Number(size) })).sound).toBe(true);
});
