import { GRAIN, LINE_KINDS, type Stroke, type TextStroke, type Tone } from '../../drawing/index.js';

/** Height of a capital of DejaVu Sans for each unit of its size. */
const CAPITAL = 0.729;

/** Longest piece of an arc drawn as one cubic curve, degrees: off the true arc by 4e-6 of its radius, 0.004 mm at 1 m. */
const PIECE_DEG = 45;

/** Names under which the two fonts are registered. */
export const PDF_FONTS = { plain: 'plain', bold: 'bold' } as const;

/** What a sheet's strokes need of a document whose unit is the millimetre, y down. */
type Paper = PDFKit.PDFDocument;

/**
 * Draws strokes on the current page, which is `height` mm high; everything true to the last digit of the file.
 *
 * Lines of one kind that follow one another are one path: it is read, packed and drawn faster.
 */
export function drawStrokes(doc: Paper, strokes: readonly Stroke[], height: number): void {
  let kind = '';
  let open = false;
  const close = () => {
    if (open) doc.stroke();
    open = false;
  };
  doc.strokeColor(INK).lineJoin('round');
  for (const stroke of strokes) {
    if (stroke.kind === 'text') {
      close();
      drawText(doc, stroke, height);
      continue;
    }
    if (stroke.kind === 'tone') {
      close();
      kind = '';
      drawTone(doc, stroke, height);
      continue;
    }
    if (stroke.line !== kind) {
      close();
      kind = stroke.line;
      const { width, dashes } = LINE_KINDS[stroke.line];
      doc.lineWidth(width);
      // dashes end where they end, whole lines are rounded
      if (dashes.length > 0) doc.dash(dashes as never, {}).lineCap('butt');
      else doc.undash().lineCap('round');
    }
    const fill = 'fill' in stroke ? stroke.fill : undefined;
    if (fill) close();
    trace(doc, stroke, height);
    if (fill) doc.fillAndStroke(fill === 'ink' ? INK : PAPER, INK);
    else open = true;
  }
  close();
}

const INK = '#000000';
const PAPER = '#ffffff';

/** A toned surface: filled, then the strokes of its grain. */
function drawTone(doc: Paper, { loops, colour, marks, ink }: Tone, height: number): void {
  const run = (points: readonly (readonly [number, number])[]) =>
    points.forEach(([x, y], i) => {
      if (i === 0) doc.moveTo(x, height - y);
      else doc.lineTo(x, height - y);
    });
  for (const loop of loops) {
    run(loop);
    doc.closePath();
  }
  doc.fill(colour);
  if (marks.length === 0) return;
  for (const mark of marks) run(mark);
  doc.undash().lineWidth(GRAIN).lineCap('round').strokeColor(ink).stroke();
  doc.strokeColor(INK);
}

function trace(doc: Paper, stroke: Exclude<Stroke, TextStroke | Tone>, height: number): void {
  switch (stroke.kind) {
    case 'line':
      doc.moveTo(stroke.from[0], height - stroke.from[1]).lineTo(stroke.to[0], height - stroke.to[1]);
      return;
    case 'polyline':
      stroke.points.forEach(([x, y], i) => {
        if (i === 0) doc.moveTo(x, height - y);
        else doc.lineTo(x, height - y);
      });
      if (stroke.closed) doc.closePath();
      return;
    case 'circle':
      arc(doc, stroke.centre, stroke.radius, 0, 360, height);
      doc.closePath();
      return;
    case 'arc':
      arc(doc, stroke.centre, stroke.radius, stroke.startDeg, stroke.sweepDeg, height);
  }
}

/** Cubic curves of at most 45°, their handles 4/3·tan(θ/4)·r long. */
function arc(
  doc: Paper,
  [cx, cy]: readonly [number, number],
  radius: number,
  startDeg: number,
  sweepDeg: number,
  height: number,
): void {
  const pieces = Math.max(1, Math.ceil(sweepDeg / PIECE_DEG - 1e-9));
  const step = (sweepDeg * Math.PI) / 180 / pieces;
  const handle = (4 / 3) * Math.tan(step / 4) * radius;
  const at = (turn: number, along: number): readonly [number, number] => [
    cx + radius * Math.cos(turn) - along * Math.sin(turn),
    height - (cy + radius * Math.sin(turn) + along * Math.cos(turn)),
  ];
  let turn = (startDeg * Math.PI) / 180;
  doc.moveTo(...at(turn, 0));
  for (let i = 0; i < pieces; i += 1) {
    const next = turn + step;
    doc.bezierCurveTo(...at(turn, handle), ...at(next, -handle), ...at(next, 0));
    turn = next;
  }
}

function drawText(doc: Paper, stroke: TextStroke, height: number): void {
  const { at, text, anchor, rotationDeg, bold } = stroke;
  if (text === '') return;
  const [x, y] = [at[0], height - at[1]];
  doc.font(bold ? PDF_FONTS.bold : PDF_FONTS.plain).fontSize(stroke.height / CAPITAL);
  const width = anchor === 'start' ? 0 : doc.widthOfString(text, PLAIN);
  const left = anchor === 'start' ? x : anchor === 'middle' ? x - width / 2 : x - width;
  doc.fillColor(INK);
  if (rotationDeg === 0) {
    doc.text(text, left, y, LETTERS);
    return;
  }
  doc.save().rotate(-rotationDeg, { origin: [x, y] });
  doc.text(text, left, y, LETTERS);
  doc.restore();
}

const PLAIN = { lineBreak: false };
const LETTERS = { lineBreak: false, baseline: 'alphabetic' } as const;
