import { GRAIN, LINE_KINDS, type Stroke, type TextStroke, type Tone } from '../../drawing/index.js';
import { lettersIn, lettersOf, pdfNumber } from './pdf-letters.js';

/** Longest piece of an arc drawn as one cubic curve, degrees: off the true arc by 4e-6 of its radius, 0.004 mm at 1 m. */
const PIECE_DEG = 45;

/** What a sheet's strokes need of a document whose unit is the millimetre, y down. */
type Paper = PDFKit.PDFDocument;

type Point = readonly [number, number];

/**
 * What draws strokes on the current page, which is `height` mm high; everything true to the last digit of the file.
 *
 * Written as the file's own operators (ISO 32000-1, 8.5), all at once: asked for one by one they took the library four times as
 * long. Lines of one kind that follow one another are one path, and a colour is said when it changes: read, packed and drawn faster.
 *
 * @returns undefined when all is drawn already, since the library had to write some of its letters itself
 */
export function drawStrokes(doc: Paper, strokes: readonly Stroke[], height: number): Uint8Array | undefined {
  let written: string[] = [];
  let [kind, ink, filling] = ['', '', ''];
  let [open, whole] = [false, true];
  const close = () => {
    if (open) written.push('S');
    open = false;
  };
  const inkIs = (colour: string) => {
    if (ink !== colour) written.push(`${rgb(colour)} RG`);
    ink = colour;
  };
  const fillIs = (colour: string) => {
    if (filling !== colour) written.push(`${rgb(colour)} rg`);
    filling = colour;
  };
  for (const stroke of strokes) {
    if (stroke.kind === 'text') {
      close();
      if (stroke.text === '') continue;
      fillIs(INK);
      const letters = lettersIn(doc, stroke, height);
      if (letters !== undefined) {
        written.push(letters);
        continue;
      }
      doc.addContent(written.join('\n'));
      written = [];
      whole = false;
      lettersOf(doc, stroke, height);
      continue;
    }
    if (stroke.kind === 'tone') {
      close();
      kind = '';
      fillIs(stroke.colour);
      written.push(...stroke.loops.map((loop) => `${run(loop, height)} h`), 'f');
      if (stroke.marks.length === 0) continue;
      inkIs(stroke.ink);
      written.push(`[] 0 d ${GRAIN} w 1 J`, ...stroke.marks.map((mark) => run(mark, height)), 'S');
      continue;
    }
    if (stroke.line !== kind) {
      close();
      kind = stroke.line;
      const { width, dashes } = LINE_KINDS[stroke.line];
      // dashes end where they end, whole lines are rounded
      written.push(`${width} w [${dashes.join(' ')}] 0 d ${dashes.length > 0 ? 0 : 1} J 1 j`);
    }
    const fill = 'fill' in stroke ? stroke.fill : undefined;
    if (fill) {
      close();
      fillIs(fill === 'ink' ? INK : PAPER);
    }
    inkIs(INK);
    written.push(traced(stroke, height));
    if (fill) written.push('B');
    else open = true;
  }
  close();
  if (whole) return new TextEncoder().encode(written.map((row) => `${row}\n`).join(''));
  if (written.length > 0) doc.addContent(written.join('\n'));
  return undefined;
}

const INK = '#000000';
const PAPER = '#ffffff';

/** A colour such as `#8c6b4a` in shares of red, green and blue. */
const rgb = (colour: string): string =>
  [1, 3, 5].map((at) => pdfNumber(Number.parseInt(colour.slice(at, at + 2), 16) / 255)).join(' ');

const at = ([x, y]: Point, height: number): string => `${pdfNumber(x)} ${pdfNumber(height - y)}`;

const run = (points: readonly Point[], height: number): string =>
  points.map((p, i) => `${at(p, height)} ${i === 0 ? 'm' : 'l'}`).join(' ');

function traced(stroke: Exclude<Stroke, TextStroke | Tone>, height: number): string {
  switch (stroke.kind) {
    case 'line':
      return run([stroke.from, stroke.to], height);
    case 'polyline':
      return `${run(stroke.points, height)}${stroke.closed ? ' h' : ''}`;
    case 'circle':
      return `${arc(stroke.centre, stroke.radius, 0, 360, height)} h`;
    case 'arc':
      return arc(stroke.centre, stroke.radius, stroke.startDeg, stroke.sweepDeg, height);
    default:
      return stroke satisfies never;
  }
}

/** Cubic curves of at most 45°, their handles 4/3·tan(θ/4)·r long. */
function arc([cx, cy]: Point, radius: number, startDeg: number, sweepDeg: number, height: number): string {
  const pieces = Math.max(1, Math.ceil(sweepDeg / PIECE_DEG - 1e-9));
  const step = (sweepDeg * Math.PI) / 180 / pieces;
  const handle = (4 / 3) * Math.tan(step / 4) * radius;
  const on = (turn: number, along: number): string => {
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    return at([cx + radius * cos - along * sin, cy + radius * sin + along * cos], height);
  };
  let turn = (startDeg * Math.PI) / 180;
  const written = [`${on(turn, 0)} m`];
  for (let i = 0; i < pieces; i += 1) {
    const next = turn + step;
    written.push(`${on(turn, handle)} ${on(next, -handle)} ${on(next, 0)} c`);
    turn = next;
  }
  return written.join(' ');
}
