import {
  GRAIN,
  LINE_KINDS,
  type Sheet,
  type Stroke,
  strokesOf,
  type TextStroke,
} from '../../drawing/index.js';
import { trimmed } from '../../length/index.js';
import { toneElements } from './tone-elements.js';

/** Fonts in the order they are looked for; the width of every text is reckoned with the first. */
const FONTS = "'DejaVu Sans','Bitstream Vera Sans',sans-serif";

/** Height of a capital of that font for each unit of its size. */
const CAPITAL = 0.729;

/**
 * A sheet as SVG at its true size: width and height in mm, the same figures in the view box, nothing around it. Text stays text.
 *
 * @returns an XML document
 */
export function sheetSvg(sheet: Sheet): string {
  const size = `${mm(sheet.width)} ${mm(sheet.height)}`;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(sheet.width)}mm" height="${mm(sheet.height)}mm" viewBox="0 0 ${size}">`,
    `<title>${escaped(sheet.title)}</title>`,
    `<style>${styles()}</style>`,
    '<rect class="paper" width="100%" height="100%"/>',
    ...strokesOf(sheet.entities).map((stroke) => element(stroke, sheet.height)),
    '</svg>',
    '',
  ].join('\n');
}

function styles(): string {
  const lines = Object.entries(LINE_KINDS).map(
    ([name, { width, dashes }]) =>
      `.${className(name)}{stroke-width:${width}${dashes.length > 0 ? `;stroke-dasharray:${dashes.join(' ')};stroke-linecap:butt` : ''}}`,
  );
  return [
    'path,circle{fill:none;stroke:#111;stroke-linecap:round;stroke-linejoin:round}',
    ...lines,
    '.ink{fill:#111}.paper{fill:#fff}',
    `text{font-family:${FONTS};fill:#111}.b{font-weight:bold}`,
  ].join('');
}

function element(stroke: Stroke, height: number): string {
  if (stroke.kind === 'text') return textElement(stroke, height);
  if (stroke.kind === 'tone') return toneElements(stroke, { up: height, grain: GRAIN });
  const point = ([x, y]: readonly [number, number]) => `${mm(x)} ${mm(height - y)}`;
  const filled = 'fill' in stroke && stroke.fill ? ` ${stroke.fill}` : '';
  const named = stroke.part === undefined ? '' : ` data-part="${escaped(stroke.part)}"`;
  const looks = `class="${className(stroke.line)}${filled}"${named}`;
  switch (stroke.kind) {
    case 'line':
      return `<path ${looks} d="M${point(stroke.from)}L${point(stroke.to)}"/>`;
    case 'polyline':
      return `<path ${looks} d="M${stroke.points.map(point).join('L')}${stroke.closed ? 'Z' : ''}"/>`;
    case 'circle':
      return `<circle ${looks} cx="${mm(stroke.centre[0])}" cy="${mm(height - stroke.centre[1])}" r="${mm(stroke.radius)}"/>`;
    case 'arc': {
      const at = (deg: number): readonly [number, number] => [
        stroke.centre[0] + stroke.radius * Math.cos((deg * Math.PI) / 180),
        stroke.centre[1] + stroke.radius * Math.sin((deg * Math.PI) / 180),
      ];
      const [from, to] = [at(stroke.startDeg), at(stroke.startDeg + stroke.sweepDeg)];
      const large = stroke.sweepDeg > 180 ? 1 : 0;
      return `<path ${looks} d="M${point(from)}A${mm(stroke.radius)} ${mm(stroke.radius)} 0 ${large} 0 ${point(to)}"/>`;
    }
  }
}

function textElement(
  { at, text, height: capital, anchor, rotationDeg, bold }: TextStroke,
  height: number,
): string {
  const [x, y] = [mm(at[0]), mm(height - at[1])];
  const turned = rotationDeg === 0 ? '' : ` transform="rotate(${trimmed(-rotationDeg, 3)} ${x} ${y})"`;
  const looks = `${bold ? ' class="b"' : ''}${anchor === 'start' ? '' : ` text-anchor="${anchor}"`}`;
  return `<text x="${x}" y="${y}" font-size="${mm(capital / CAPITAL)}"${looks}${turned}>${escaped(text)}</text>`;
}

const mm = (value: number): string => trimmed(value, 3);

const className = (name: string): string => name.replaceAll(' ', '-');

const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (sign) => `&${{ '&': 'amp', '<': 'lt', '>': 'gt', '"': 'quot' }[sign]};`);
