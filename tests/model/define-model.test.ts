import { expect, test } from 'vitest';
import * as z from 'zod';
import { choice, defineModel, length, type ModelText } from '../../src/model/index.js';
import { smallModel } from './small-model.js';

const model = (name: string, parameters: z.ZodRawShape): ModelText<z.ZodRawShape> => ({
  ...smallModel,
  name,
  parameters,
});

const seat = length({ min: 1, max: 2, default: 1, help: 'seat' });

test('a default outside its own range is a fault of the model', () => {
  expect(() => length({ min: 10, max: 20, default: 30, help: 'seat' })).toThrow(
    /30 is not a length from 10 to 20/,
  );
  expect(() => choice(['a', 'b'], { default: 'c' as 'a', help: 'seat' })).toThrow(/c is none of a, b/);
});

test('a parameter made without a kind is a fault of the model', () => {
  expect(() => defineModel(model('bare', { seat: z.number() }))).toThrow(/seat is a bare schema/);
});

test('names that cannot be typed, and two names that are one option, are faults of the model', () => {
  expect(() => defineModel(model('Big Stool', { seat }))).toThrow(/model name/);
  expect(() => defineModel(model('stool', { 'seat-length': seat }))).toThrow(/camelCase/);
  expect(() => defineModel(model('stool', { seat }))).not.toThrow();
});
