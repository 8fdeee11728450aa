/** A place in the picture, in the canvas's own pixels. */
export type Pixel = readonly [x: number, y: number];

/** Between a text and the edge of the picture, in pixels. */
const EDGE = 6;

/** Adds an element to what is written over the picture. */
export function add(
  sheet: SVGElement,
  name: string,
  looks: Readonly<Record<string, string | number>>,
): SVGElement {
  const one = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(looks)) {
    one.setAttribute(key, typeof value === 'number' ? value.toFixed(1) : value);
  }
  sheet.append(one);
  return one;
}

/** Writes lines of text, one below the other, and moves what would be cut off by the edge of the picture. */
export function write(
  sheet: SVGSVGElement,
  { x, y, anchor }: { x: number; y: number; anchor: string },
  lines: readonly string[],
  into: SVGElement = sheet,
): DOMRect {
  const text = add(into, 'text', { x, y, 'text-anchor': anchor }) as SVGTextElement;
  for (const [i, words] of lines.entries()) add(text, 'tspan', { x, dy: 15 * i }).textContent = words;
  const { x: left, y: top, width, height } = text.getBBox();
  const [right, bottom] = [sheet.clientWidth - EDGE, sheet.clientHeight - EDGE];
  const byX = Math.max(EDGE - left, Math.min(0, right - left - width));
  const byY = Math.max(EDGE - top, Math.min(0, bottom - top - height));
  if (byX !== 0 || byY !== 0)
    text.setAttribute('transform', `translate(${byX.toFixed(1)} ${byY.toFixed(1)})`);
  return new DOMRect(left + byX, top + byY, width, height);
}
