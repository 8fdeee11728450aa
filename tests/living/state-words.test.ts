import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { LivingState } from '../../src/files/index.js';
import { linkOf, stateOfLink } from '../../src/living/link.js';
import { sizesYaml } from '../../src/living/sizes-yaml.js';
import { storyOf } from '../../src/living/story.js';
import { verdictWords } from '../../src/living/verdict-shown.js';
import { plainYaml } from '../../src/model/index.js';
import { many } from '../properties/seed.js';

const START: LivingState = { design: 'stool', given: {}, units: 'mm' };

const name = fc
  .stringMatching(/^[a-z][a-z-]{0,20}[a-z]$/)
  .filter((one) => one !== 'design' && one !== 'units');
const states = fc.record({
  design: fc.constantFrom('stool', 'frame'),
  units: fc.constantFrom('mm' as const, 'in' as const),
  given: fc.dictionary(name, fc.string({ maxLength: 40, unit: 'grapheme' })),
});

test('for all states a link reads back as the state it was made of', () => {
  fc.assert(
    fc.property(states, (state) => {
      expect(stateOfLink(`#${linkOf(state)}`, ['stool', 'frame'])).toEqual({
        ...state,
        given: { ...state.given },
      });
    }),
    { numRuns: many(100, 1000) },
  );
});

test('for all texts a link is read or refused in words, and nothing else comes of it', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 200, unit: 'binary' }), (text) => {
      try {
        const { given } = stateOfLink(text, ['stool']);
        expect(Object.getPrototypeOf(given)).toBe(Object.prototype);
      } catch (error) {
        expect(String(error)).toMatch(/^InputError: The link cannot be used: /);
      }
    }),
    { numRuns: many(200, 5000) },
  );
});

test('for all states the file of sizes is YAML that holds every text as it was given', async () => {
  await fc.assert(
    fc.asyncProperty(states, async (state) => {
      expect((await plainYaml(sizesYaml(state), 'sizes', '')) ?? {}).toEqual({ ...state.given });
    }),
    { numRuns: many(50, 500) },
  );
});

test('steps are taken back and forth; what was only passed on the way is no step', () => {
  const at = (height: string): LivingState => ({ ...START, given: { height } });
  const story = storyOf(START);
  for (const height of ['1', '2', '3']) story.touch(at(height));
  expect(story.now()).toEqual(at('3'));
  story.step(at('3'));
  story.step(at('4'));
  story.step(at('4'));
  expect(story.undo()).toBe(true);
  expect(story.now()).toEqual(at('3'));
  expect(story.undo()).toBe(true);
  expect(story.now()).toEqual(START);
  expect(story.undo()).toBe(false);
  expect(story.redo()).toBe(true);
  story.step(at('5'));
  expect(story.canRedo()).toBe(false);
});

test('a verdict is said by its worst first', () => {
  expect(verdictWords({ errors: 0, warnings: 0, notes: 0 })).toBe('Every check passed');
  expect(verdictWords({ errors: 0, warnings: 2, notes: 1 })).toBe('Passed, with 2 warnings and 1 note');
  expect(verdictWords({ errors: 1, warnings: 0, notes: 0 })).toBe('Failed: 1 error. Do not cut.');
});
