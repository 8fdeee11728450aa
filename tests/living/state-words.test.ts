import fc from 'fast-check';
import { deflateSync, strFromU8 } from 'fflate';
import { expect, test } from 'vitest';
import type { LivingState } from '../../src/files/index.js';
import { linkOf, stateOfLink } from '../../src/living/link.js';
import { sizesYaml } from '../../src/living/sizes-yaml.js';
import { storyOf } from '../../src/living/story.js';
import { verdictWords } from '../../src/living/verdict-shown.js';
import { plainYaml } from '../../src/model/index.js';
import { many } from '../properties/seed.js';

const DESIGNS = [
  { name: 'stool', title: 'Stool', summary: '' },
  { name: 'frame', title: 'Frame', summary: '', told: { file: 'frame.yaml', text: '' } },
];
const WRITTEN = { format: 'binary', curves: 'arcs' } as const;

const START: LivingState = { design: 'stool', given: {}, units: 'mm' };

const name = fc
  .stringMatching(/^[a-z][a-z-]{0,20}[a-z]$/)
  .filter((one) => !['design', 'units', 'told-piece', 'told-shop'].includes(one));
const states = fc.record({
  design: fc.constantFrom('stool', 'frame'),
  units: fc.constantFrom('mm' as const, 'in' as const),
  given: fc.dictionary(name, fc.string({ maxLength: 40, unit: 'grapheme' })),
});

test('for all states a link reads back as the state it was made of', () => {
  fc.assert(
    fc.property(states, (state) => {
      expect(stateOfLink(`#${linkOf(state, true)}`, DESIGNS)).toEqual({
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
        const { given } = stateOfLink(text, DESIGNS);
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
      expect((await plainYaml(sizesYaml(state, WRITTEN), 'sizes', '')) ?? {}).toEqual({ ...state.given });
    }),
    { numRuns: many(50, 500) },
  );
});

test('a link carries a text written in the page, and the shop only where that is wished', () => {
  const told = { file: 'frame.yaml', text: 'title: Rähmchen <b>\nboards: 4\n'.repeat(40) };
  const shop = { name: 'shop.yaml', text: '# what it is\nsaw-kerf: 2 mm\n\n  # no more\nclamps: []' };
  const state: LivingState = { ...START, design: 'frame', told, shop };
  const alone = stateOfLink(linkOf(state, false), DESIGNS);
  expect(alone).toEqual({ design: 'frame', units: 'mm', given: {}, told });
  const both = stateOfLink(linkOf(state, true), DESIGNS);
  expect(both.shop).toEqual({ name: 'shop.yaml', text: 'saw-kerf: 2 mm\nclamps: []' });
  // letters without order do not pack
  const random = fc.sample(fc.string({ minLength: 9000, maxLength: 9000 }), { numRuns: 1, seed: 7 })[0]!;
  expect(() => linkOf({ ...state, told: { ...told, text: random } }, false)).toThrow(
    /^The link would have \d+ characters, and 8000 is the limit: save the text or the shop as a file/,
  );
});

test('a text in a link that is no text, is none of this piece or would fill the memory is refused', () => {
  const bomb = btoa(strFromU8(deflateSync(new Uint8Array(3_000_000), { level: 9 }), true))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replace(/=+$/, '');
  expect(bomb.length).toBeLessThan(7900);
  for (const [fragment, words] of [
    [`design=frame&told-piece=${bomb}`, /longer than 100000 bytes/],
    ['design=frame&told-piece=%3Cscript%3E', /not packed as this page packs it/],
    ['design=frame&told-piece=____', /not packed as this page packs it/],
    ['design=frame&told-piece=', /not packed as this page packs it/],
    ['design=stool&told-piece=AwA', /stool, which is told in code/],
    ['design=frame&told-shop=AAAA', /not packed as this page packs it/],
  ] as const)
    expect(() => stateOfLink(fragment, DESIGNS), fragment).toThrow(words);
});

test('files are asked of the command line as the page writes them', () => {
  expect(sizesYaml(START, { format: 'ascii', curves: 'segments', drawingUnits: 'dual' })).toContain(
    '--format ascii --curves segments --drawing-units dual',
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
