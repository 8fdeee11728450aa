import { trimmed } from '../../length/index.js';

/** A number as every SVG writer prints it: mm to 0.001, no exponent, no -0. */
export const svgNumber = (value: number): string => trimmed(value, 3);

/** Text safe between tags and inside quoted attributes (XML 1.0, section 2.4); control characters become blanks. */
export const svgText = (text: string): string =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
    .replace(/[\u0000-\u001f\u007f]+/g, ' ')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');

/**
 * A whole SVG file whose user unit is the millimetre: width and height in mm equal the view box, with no padding.
 *
 * @param size mm, of the page
 * @param body elements, already written
 */
export const svgDocument = (
  size: { readonly width: number; readonly height: number; readonly title: string },
  body: readonly string[],
): string => {
  const [width, height] = [svgNumber(size.width), svgNumber(size.height)];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${svgText(size.title)}</title>`,
    ...body,
    '</svg>',
    '',
  ].join('\n');
};
