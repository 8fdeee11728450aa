import { BODY } from './draw.js';
import { textWidth } from './text-width.js';

/** Text in rows of at most a width, broken between words; a word that is wider alone is broken where it must be. */
export function wrappedText(
  text: string,
  width: number,
  height: number = BODY,
  bold = false,
): readonly string[] {
  const fits = (row: string) => textWidth(row, height, bold) <= width;
  const rows: string[] = [];
  for (const word of text.split(' ').flatMap((one) => pieces(one, fits))) {
    const last = rows.at(-1);
    const longer = last === undefined ? word.text : `${last}${word.glued ? '' : ' '}${word.text}`;
    if (last !== undefined && fits(longer)) rows[rows.length - 1] = longer;
    else rows.push(word.text);
  }
  return rows.length === 0 ? [''] : rows;
}

/** A word, or its pieces where it is too wide; `glued` ones follow the one before without a space. */
function pieces(
  word: string,
  fits: (row: string) => boolean,
): readonly { readonly text: string; readonly glued: boolean }[] {
  if (fits(word)) return [{ text: word, glued: false }];
  const found: { text: string; glued: boolean }[] = [];
  // behind a stroke, a hyphen or a comma first, then anywhere
  for (const part of word.split(/(?<=[/\-,:])/)) {
    let rest = part;
    while (rest !== '') {
      let count = rest.length;
      while (count > 1 && !fits(rest.slice(0, count))) count -= 1;
      found.push({ text: rest.slice(0, count), glued: found.length > 0 });
      rest = rest.slice(count);
    }
  }
  return found;
}

/** The widest word of a text, mm: no column is narrower where there is a choice. */
export const widestWord = (text: string, height: number = BODY, bold = false): number =>
  Math.max(0, ...text.split(' ').map((word) => textWidth(word, height, bold)));
