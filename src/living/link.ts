import { InputError } from '../errors.js';
import type { LivingState } from '../files/index.js';

/** More than any link of this page needs, characters. */
const [MOST, MOST_VALUE] = [8000, 300];

/** A state as the fragment of a link: sizes with their units. The shop stays with the person, and a text written in the page too. */
export const linkOf = ({ design, units, given }: LivingState): string =>
  [['design', design], ['units', units], ...Object.entries(given)]
    .map(([name, text]) => `${name}=${encodeURIComponent(text!)}`)
    .join('&');

/**
 * The state a fragment tells; sizes are read later, by what reads the person's own words.
 *
 * @param fragment with or without its #
 * @param designs those there are
 * @throws InputError for what is no link of this page
 */
export function stateOfLink(
  fragment: string,
  designs: readonly string[],
): Pick<LivingState, 'design' | 'units' | 'given'> {
  const text = fragment.replace(/^#/, '');
  if (text.length > MOST) throw refused(`it has ${text.length} characters, and ${MOST} is the limit`);
  const pairs = new Map<string, string>();
  for (const pair of text.split('&')) {
    const [, name, value] = /^([a-z][a-z0-9-]{0,59})=(.*)$/.exec(pair) ?? [];
    if (name === undefined || value === undefined)
      throw refused(`'${shown(pair)}' is no name with a value: write them like height=250%20mm`);
    if (pairs.has(name)) throw refused(`${name} is given twice: leave one out`);
    pairs.set(name, unescaped(name, value));
  }
  const design = pairs.get('design') ?? designs[0]!;
  if (!designs.includes(design))
    throw refused(`there is no design '${shown(design)}' in this page: it has ${designs.join(', ')}`);
  const units = pairs.get('units') ?? 'mm';
  if (units !== 'mm' && units !== 'in') throw refused(`units is '${shown(units)}'; it must be mm or in`);
  pairs.delete('design');
  pairs.delete('units');
  return { design, units, given: Object.fromEntries(pairs) };
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

const shown = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

const refused = (why: string): InputError =>
  new InputError(
    'link-refused',
    `The link cannot be used: ${why}. The piece is shown as it was published; ask for the link again, or set the sizes here.`,
  );
