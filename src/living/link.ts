import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate';
import { InputError } from '../errors.js';
import type { LivingDesign, LivingState } from '../files/index.js';

/** More than most programs that pass links on let through, and more than any size needs, characters. */
const [MOST, MOST_VALUE] = [8000, 300];

/** A text in a link, taken out of its packing: more than any piece or shop needs, bytes. */
const MOST_TEXT = 100_000;

/** Names of what is not a size. */
const [TEXT, SHOP] = ['told-piece', 'told-shop'] as const;

/**
 * A state as the fragment of a link: sizes with their units, and the text of a piece written in the page.
 *
 * @param withShop the shop too
 * @throws InputError when it is too long for a link
 */
export function linkOf({ design, units, given, told, shop }: LivingState, withShop: boolean): string {
  const pairs = [
    ['design', design],
    ['units', units],
    ...Object.entries(given),
    ...(told ? [[TEXT, packed(told.text)]] : []),
    ...(withShop && shop ? [[SHOP, packed(withoutComments(shop.text))]] : []),
  ];
  const link = pairs.map(([name, text]) => `${name}=${encodeURIComponent(text!)}`).join('&');
  if (link.length <= MOST) return link;
  throw new InputError(
    'link-too-long',
    `The link would have ${link.length} characters, and ${MOST} is the limit: save the text or the shop as a file and send that.`,
  );
}

/** What a link tells of a state; the shop stays as it is when it tells none. */
export type Linked = Pick<LivingState, 'design' | 'units' | 'given' | 'told' | 'shop'>;

/**
 * The state a fragment tells; sizes are read later, by what reads the person's own words.
 *
 * @param fragment with or without its #
 * @param designs those there are
 * @throws InputError for what is no link of this page
 */
export function stateOfLink(fragment: string, designs: readonly LivingDesign[]): Linked {
  const text = fragment.replace(/^#/, '');
  if (text.length > MOST) throw refused(`it has ${text.length} characters, and ${MOST} is the limit`);
  const pairs = new Map<string, string>();
  for (const pair of text.split('&')) {
    const [, name, value] = /^([a-z][a-z0-9-]{0,59})=(.*)$/.exec(pair) ?? [];
    if (name === undefined || value === undefined)
      throw refused(`'${shown(pair)}' is no name with a value: write them like height=250%20mm`);
    if (pairs.has(name)) throw refused(`${name} is given twice: leave one out`);
    pairs.set(name, name === TEXT || name === SHOP ? unpacked(name, value) : unescaped(name, value));
  }
  const names = designs.map(({ name }) => name);
  const design = pairs.get('design') ?? names[0]!;
  const own = designs.find(({ name }) => name === design);
  if (!own) throw refused(`there is no design '${shown(design)}' in this page: it has ${names.join(', ')}`);
  const units = pairs.get('units') ?? 'mm';
  if (units !== 'mm' && units !== 'in') throw refused(`units is '${shown(units)}'; it must be mm or in`);
  const [told, shop] = [pairs.get(TEXT), pairs.get(SHOP)];
  if (told !== undefined && !own.told)
    throw refused(`it carries a text for ${design}, which is told in code: leave ${TEXT} out`);
  for (const name of ['design', 'units', TEXT, SHOP]) pairs.delete(name);
  return {
    design,
    units,
    given: Object.fromEntries(pairs),
    ...(told !== undefined && { told: { file: own.told!.file, text: told } }),
    ...(shop !== undefined && { shop: { name: 'shop.yaml', text: shop } }),
  };
}

function unescaped(name: string, value: string): string {
  let text: string;
  try {
    text = decodeURIComponent(value);
  } catch {
    throw refused(`the value of ${name} is not written as links are: '${shown(value)}'`);
  }
  if (text.length > MOST_VALUE)
    throw refused(`the value of ${name} has ${text.length} characters, and ${MOST_VALUE} is the limit`);
  return text;
}

/** A text, packed, in the letters that stand in a link as they are. */
const packed = (text: string): string =>
  btoa(strFromU8(deflateSync(strToU8(text), { level: 9 }), true))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replace(/=+$/, '');

function unpacked(name: string, value: string): string {
  const parts: Uint8Array[] = [];
  let size = 0;
  try {
    const inflate = new Inflate((part) => {
      parts.push(part);
      size += part.length;
      // a few letters can be packed that fill any memory
      if (size > MOST_TEXT) throw refused(`the text in ${name} is longer than ${MOST_TEXT} bytes`);
    });
    const bytes = strToU8(atob(value.replaceAll('-', '+').replaceAll('_', '/')), true);
    for (let at = 0; at < bytes.length; at += 64)
      inflate.push(bytes.subarray(at, at + 64), at + 64 >= bytes.length);
    const whole = new Uint8Array(size);
    let at = 0;
    for (const part of parts) {
      whole.set(part, at);
      at += part.length;
    }
    if (value === '') throw new RangeError('nothing is packed');
    return new TextDecoder('utf-8', { fatal: true }).decode(whole);
  } catch (error) {
    if (error instanceof InputError) throw error;
    throw refused(`the text in ${name} is not packed as this page packs it`);
  }
}

/** A shop file without what only explains it. */
const withoutComments = (text: string): string =>
  text
    .split('\n')
    .filter((line) => line.trim() !== '' && !line.trimStart().startsWith('#'))
    .join('\n');

const shown = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

const refused = (why: string): InputError =>
  new InputError(
    'link-refused',
    `The link cannot be used: ${why}. The piece is shown as it was published; ask for the link again, or set the sizes here.`,
  );
