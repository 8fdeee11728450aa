import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import frame from '../../models/frame.js';
import jig from '../../models/jig.js';
import type { LivingDesign, LivingState } from '../../src/files/index.js';
import { type Answer, type Asked, type Line, type Outfit, serve } from '../../src/living/index.js';
import type { Model } from '../../src/model/index.js';
import { SUPPLIES } from '../../src/node/index.js';
import { BUILDS_KEPT } from '../../src/solid/kernel.js';
import { handedOutAnew, handedOutSince, left, watchKernel } from '../solid/handed-out.js';

const FRAME: LivingDesign = { name: 'frame', title: 'Frame', summary: '' };
const START: LivingState = { design: 'frame', given: {}, units: 'mm' };

/** The worker's own end of the line, driven without a browser. */
async function desk(designs: readonly LivingDesign[] = [FRAME]) {
  const answers: Answer[] = [];
  let heard = (): void => {};
  const line: Line = {
    onmessage: null,
    postMessage: (answer) => {
      answers.push(answer);
      heard();
    },
  };
  serve([frame, jig] as unknown as Model[], line);
  const say = (data: Outfit | Asked) => line.onmessage!({ data });
  const kernel = readFileSync(createRequire(import.meta.url).resolve('manifold-3d/manifold.wasm'));
  const { plain, bold } = await SUPPLIES.planFonts();
  const own = kernel.buffer.slice(kernel.byteOffset, kernel.byteOffset + kernel.byteLength);
  say({
    kind: 'outfit',
    version: '0',
    designs,
    start: START,
    written: { format: 'binary', curves: 'arcs' },
    kernel: own,
    plain,
    bold,
    viewer: '',
    renderer: undefined,
  });
  let number = 0;
  return {
    answers,
    save: (given: LivingState['given']) => {
      number += 1;
      say({ kind: 'save', number, state: { ...START, given }, wanted: 'A4', force: false });
      return number;
    },
    /** @param dragged whether the slider is not let go of yet: then no verdict is begun for a while */
    show: (given: LivingState['given'], others: Partial<LivingState> = {}, dragged = true) => {
      number += 1;
      say({ kind: 'show', number, state: { ...START, ...others, given }, flat: false, dragged });
      return number;
    },
    /** The answer of a kind to a question, or the one that ends it. */
    answer: async (to: number, kind: Answer['kind']): Promise<Answer> => {
      for (;;) {
        const found = answers.find(
          (one) => one.number === to && [kind, 'refused', 'fault', 'settled'].includes(one.kind),
        );
        if (found) return found;
        await new Promise<void>((go) => {
          heard = go;
        });
      }
    },
  };
}

test('a state is told the quickest first, and to the end', async () => {
  const { show, answer, answers } = await desk();
  const number = show({ length: '700 mm' });
  await answer(number, 'settled');
  const kinds = answers.filter((one) => one.number === number).map(({ kind }) => kind);
  expect([...new Set(kinds)]).toEqual([
    'form',
    'glance',
    'picture',
    'verdict',
    'told',
    'changed',
    'red',
    'settled',
  ]);
  // one for every size that can be told beforehand: the cutter follows from what is at hand
  expect(kinds.filter((kind) => kind === 'red')).toHaveLength(5);
});

test('while questions come fast every picture may be shown, but only the last is judged', async () => {
  const { show, answer, answers } = await desk();
  const first = show({ length: '700 mm' });
  await answer(first, 'picture');
  const [second, last] = [show({ length: '710 mm' }), show({ length: '720 mm' })];
  await answer(last, 'verdict');
  const of = (number: number) => answers.filter((one) => one.number === number).map(({ kind }) => kind);
  expect(of(first)).not.toContain('verdict');
  expect(of(second)).toEqual([]);
  expect(of(last)).toContain('verdict');
});

test('a state that gave way to saving is told to its end afterwards', async () => {
  const { show, save, answer, answers } = await desk();
  const shown = show({ length: '700 mm' });
  await answer(shown, 'picture');
  const saved = save({ length: '700 mm' });
  expect(await answer(saved, 'saved')).toMatchObject({ kind: 'saved', heldBack: [] });
  expect(answers.some(({ kind }) => kind === 'verdict')).toBe(false);
  expect(await answer(shown, 'settled')).toMatchObject({ kind: 'settled' });
  expect(answers.find(({ kind }) => kind === 'verdict')).toMatchObject({ number: shown, errors: 0 });
});

test('where the data alone find an error the slider is red, and says which', async () => {
  const { show, answer, answers } = await desk();
  const number = show({ 'rail-width': '70 mm', tenons: '2' });
  await answer(number, 'settled');
  const red = answers.find((one) => one.kind === 'red' && one.option === 'rail-width');
  // two tenons of 12 mm with 12.7 mm of wood at each end and between want 62.1 mm
  const [first] = (red as Answer & { kind: 'red' }).spans;
  expect(first).toMatchObject({ from: 40, why: expect.stringContaining('seat is 40.0 mm long') });
  expect(first!.to).toBeGreaterThan(55);
  expect(first!.to).toBeLessThan(70);
});

test('words that cannot be read are refused with what is allowed, one of them for each size', async () => {
  const { show, answer } = await desk();
  const refused = await answer(show({ length: 'far', tenons: '7' }), 'settled');
  expect(refused).toMatchObject({
    kind: 'refused',
    text: expect.stringMatching(/^length cannot be read: .*\ntenons is 7; it must be 1 to 3/),
    places: [
      { of: 'size', name: 'length', text: expect.stringMatching(/^length cannot be read: [^\n]*$/) },
      { of: 'size', name: 'tenons', text: expect.stringMatching(/^tenons is 7/) },
    ],
  });
  // sizes that are each allowed and cannot be together, in the person's units
  const closed = await answer(show({ length: '240 mm', 'rail-width': '120 mm' }, { units: 'in' }), 'settled');
  expect(closed).toMatchObject({
    kind: 'refused',
    places: [{ of: 'size', name: 'length', text: expect.stringMatching(/^length 9-7\/16"|^length 9\.4/) }],
  });
});

test('a piece is taken from its own text, and what is wrong with it is told with its line', async () => {
  const text = readFileSync(new URL('../../pieces/tray.yaml', import.meta.url), 'utf8');
  const tray: LivingDesign = { name: 'tray', title: 'Tray', summary: '', told: { file: 'tray.yaml', text } };
  const { show, answer } = await desk([tray]);
  const picture = await answer(show({}, { design: 'tray' }), 'picture');
  expect(picture).toMatchObject({ kind: 'picture', data: { title: expect.stringMatching(/tray/i) } });
  const wrong = text.replace(/^boards:/m, 'bords:');
  const told = { file: 'tray.yaml', text: wrong };
  expect(await answer(show({}, { design: 'tray', told }), 'settled')).toMatchObject({
    kind: 'refused',
    text: expect.stringMatching(/tray\.yaml, line \d+, column \d+: .*bords/),
  });
});

test('a shop is told in the page as in its file, and what is wrong with it is refused', async () => {
  const { show, answer } = await desk();
  const shop = (text: string) => ({ shop: { name: 'shop.yaml', text } });
  const small = 'router: { base: { along: 160 } }\ncutters: [{ nominal: 4 }]\n';
  expect(await answer(show({}, shop(small)), 'verdict')).toMatchObject({ kind: 'verdict' });
  expect(await answer(show({}, shop('routers: {}')), 'verdict')).toMatchObject({
    kind: 'refused',
    text: expect.stringContaining("there is no 'routers' here: did you mean router?"),
  });
  // its places are those of the shop, whatever sizes the piece has
  expect(
    await answer(
      show({}, shop('router: { base: { along: 160 } }\njig: { cutter: far }\nsaw-kerf: 40')),
      'verdict',
    ),
  ).toMatchObject({
    kind: 'refused',
    text: expect.stringMatching(/^shop\.yaml: saw-kerf is 40 mm/),
    places: [{ of: 'shop', name: 'saw-kerf', text: expect.stringMatching(/^saw-kerf is 40 mm/) }],
  });
  expect(await answer(show({}, shop(`${small}jig: { cutter: far }`)), 'verdict')).toMatchObject({
    kind: 'refused',
    text: expect.stringMatching(/^shop\.yaml: jig: cutter cannot be read/),
    places: [{ of: 'shop', name: 'jig', text: expect.stringMatching(/^cutter cannot be read/) }],
  });
});

test('after many changes nothing more of the kernel is held than after a few', async () => {
  const { show, answer } = await desk();
  await watchKernel();
  handedOutAnew();
  const heldAfter = async (changes: number): Promise<number> => {
    for (let i = 0; i < changes; i += 1) {
      const given = { length: `${600 + (i % 40)} mm`, 'rail-width': `${60 + (i % 7)} mm` };
      await answer(show(given, {}, false), 'settled');
    }
    return left().length;
  };
  // what is remembered of earlier sizes
  const few = await heldAfter(BUILDS_KEPT + 1);
  expect(handedOutSince()).toBeGreaterThan(1000);
  expect(await heldAfter(6)).toBeLessThanOrEqual(few);
});
