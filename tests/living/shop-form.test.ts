import { expect, test } from 'vitest';
import { type ShopWords, shopYaml } from '../../src/living/shop-words.js';
import { plainYaml } from '../../src/model/index.js';
import { builtInShop, readShop, type ShopField, shopExample, shopForm } from '../../src/shop/index.js';

/** What the page reads out of a form that nobody touched. */
function wordsOf(field: ShopField): ShopWords {
  const { name } = field;
  if (field.kind === 'value') return { name, text: field.text, several: field.several };
  if (field.kind === 'lines') return { name, lines: field.text };
  return field.kind === 'group'
    ? { name, fields: field.fields.map(wordsOf) }
    : { name, rows: field.rows.map((row) => row.map(wordsOf)) };
}

const formOf = async (text: string, units: 'mm' | 'in') =>
  shopForm(await plainYaml(text, 'shop.yaml', ''), units);
const read = async (text: string, units: 'mm' | 'in') =>
  readShop(await plainYaml(text, 'shop.yaml', ''), 'shop.yaml', units);

for (const units of ['mm', 'in'] as const)
  test(`the built-in shop in ${units} goes through the form and back as the same shop`, async () => {
    const own = {
      ...builtInShop(units),
      jig: { railLength: '300 mm' },
      place: { dryCelsius: 18, dryHumidity: 30, dampCelsius: 22, dampHumidity: 70 },
    };
    const example = shopExample(units, own);
    const written = shopYaml((await formOf(example, units)).map(wordsOf));
    expect(await read(written, units)).toEqual(await read(example, units));
    expect(written).not.toContain('#');
  });

test('words that are wrong stand in the form as they were written, and are refused at their path', async () => {
  const text =
    'router: { base: { along: wide } }\nturret: 3\ncutters:\n  - { nominal: 8 mm, shank: "12: no" }\n';
  const words = (await formOf(text, 'mm')).map(wordsOf);
  const written = shopYaml(words);
  expect(written).toBe(
    'router:\n  base:\n    along: wide\ncutters:\n  - { nominal: 8 mm, shank: "12: no" }\n',
  );
  await expect(read(written, 'mm')).rejects.toThrow(
    /^shop\.yaml: router\.base\.along .*\nshop\.yaml: cutters\[0\]\.shank /,
  );
});

test('a field tells its range in the units of the person', async () => {
  const kerf = (await formOf('', 'in')).find(({ name }) => name === 'saw-kerf');
  expect(kerf).toMatchObject({
    kind: 'value',
    length: true,
    text: '',
    help: expect.stringMatching(/when left out: not verified/),
  });
});

test('what YAML would take for something else is written as a word', () => {
  for (const text of [
    'yes',
    'null',
    '3" wide',
    "5'-6",
    'a: b',
    '- 1',
    '0x10',
    '1e3',
    '~',
    '# no',
    '{}',
    '8 mm, 9',
  ])
    expect(shopYaml([{ name: 'name', text, several: false }])).toBe(`name: ${JSON.stringify(text)}\n`);
  expect(shopYaml([{ name: 'collets', text: '6, 1/4 in,8 mm', several: true }])).toBe(
    'collets: [6, 1/4 in, 8 mm]\n',
  );
});
