import type { TextStroke } from '../../drawing/index.js';

/** Height of a capital of DejaVu Sans for each unit of its size. */
const CAPITAL = 0.729;

/** Names under which the two fonts are registered. */
export const PDF_FONTS = { plain: 'plain', bold: 'bold' } as const;

/** Where a glyph stands after the one before it, thousandths of the size. */
interface GlyphPlace {
  readonly xAdvance: number;
  readonly advanceWidth: number;
  readonly xOffset: number;
  readonly yOffset: number;
}

/** A font of a document as its library keeps it. */
interface UsedFont {
  readonly id: string;
  readonly ref: () => unknown;
  readonly encode: (text: string) => readonly [glyphs: readonly string[], places: readonly GlyphPlace[]];
}

/** Letters of each font in the order of their numbers; some together, where they do not simply stand in a row. */
export interface Letters {
  readonly plain: readonly string[];
  readonly bold: readonly string[];
}

/** What a document's library keeps to itself: its own way to write a line asks for each what a line may be besides. */
interface Inside {
  readonly _font: UsedFont;
  readonly page: { readonly fonts: Record<string, unknown> };
}

/** A text in a font: its glyphs as the file has them, and how wide they are together, thousandths of the size. */
interface Encoded {
  readonly glyphs: string;
  readonly width: number;
  /** Each glyph stands where the one before it ends. */
  readonly inRow: boolean;
}

/** The texts of a font that were asked for, in the order in which their letters got their numbers. */
const known = new WeakMap<UsedFont, Map<string, Encoded>>();

const fontNamed = (doc: PDFKit.PDFDocument, name: keyof Letters): UsedFont =>
  (doc.font(PDF_FONTS[name]) as unknown as Inside)._font;

/** Numbers the letters of both fonts: documents that begin with the same ones write the same for the same text. */
export function numberLetters(doc: PDFKit.PDFDocument, letters: Letters): void {
  for (const name of ['plain', 'bold'] as const) {
    const font = fontNamed(doc, name);
    for (const letter of letters[name]) encoded(font, letter);
  }
}

/** The letters of both fonts a document has numbered so far. */
export function lettersSoFar(doc: PDFKit.PDFDocument): Letters {
  const of = (name: keyof Letters) => [...(known.get(fontNamed(doc, name))?.keys() ?? [])];
  return { plain: of('plain'), bold: of('bold') };
}

/** Names both fonts on the current page. */
export function fontsOnPage(doc: PDFKit.PDFDocument): void {
  for (const name of ['plain', 'bold'] as const) {
    const font = fontNamed(doc, name);
    (doc as unknown as Inside).page.fonts[font.id] ??= font.ref();
  }
}

/** Letters and signs that stand one after the other whatever is beside them: the fonts of a plan know no ligatures and no kerning. */
const STANDS_ALONE = /^[ -~\u00a0-\u024f\u0370-\u03ff\u2010-\u2027\u2030-\u205e\u2070-\u27bf]*$/;

function encoded(font: UsedFont, text: string): Encoded {
  const before = known.get(font) ?? new Map<string, Encoded>();
  known.set(font, before);
  const one = before.get(text);
  if (one) return one;
  if (text.length > 1 && STANDS_ALONE.test(text)) return letterByLetter(font, text);
  const found = asked(font, text);
  before.set(text, found);
  return found;
}

/** The library lays a text out for every language there is: asked for each letter once it takes a tenth of the time. */
function letterByLetter(font: UsedFont, text: string): Encoded {
  let [glyphs, width, inRow] = ['', 0, true];
  for (const letter of text) {
    const one = encoded(font, letter);
    glyphs += one.glyphs;
    width += one.width;
    inRow &&= one.inRow;
  }
  return { glyphs, width, inRow };
}

function asked(font: UsedFont, text: string): Encoded {
  const [glyphs, places] = font.encode(text);
  return {
    glyphs: glyphs.join(''),
    width: places.reduce((sum, { xAdvance }) => sum + xAdvance, 0),
    inRow: places.every((at) => at.xAdvance === at.advanceWidth && !at.xOffset && !at.yOffset),
  };
}

/** A number as the file has it, to a tenth of a thousandth of a millimetre. */
export const pdfNumber = (value: number): number => Math.round(value * 1e4) / 1e4;

/**
 * What draws a text (ISO 32000-1, 9.4) on a page that is `height` mm high, y down, and names both fonts.
 *
 * @returns undefined for letters that do not simply stand in a row, which the library draws itself
 */
export function lettersIn(doc: PDFKit.PDFDocument, stroke: TextStroke, height: number): string | undefined {
  const font = fontNamed(doc, stroke.bold ? 'bold' : 'plain');
  const { glyphs, width, inRow } = encoded(font, stroke.text);
  if (!inRow) return undefined;
  const size = sizeOf(stroke);
  const turn = (stroke.rotationDeg * Math.PI) / 180;
  const [cos, sin] = [pdfNumber(Math.cos(turn)), pdfNumber(Math.sin(turn))];
  const back = BEFORE[stroke.anchor] * (width / 1000) * size;
  const [x, y] = [stroke.at[0] - back * Math.cos(turn), height - stroke.at[1] + back * Math.sin(turn)];
  return `BT ${cos} ${-sin} ${-sin} ${-cos} ${pdfNumber(x)} ${pdfNumber(y)} Tm /${font.id} ${pdfNumber(size)} Tf <${glyphs}> Tj ET`;
}

/** Draws a text with everything the library knows of writing. */
export function lettersOf(doc: PDFKit.PDFDocument, stroke: TextStroke, height: number): void {
  doc.font(PDF_FONTS[stroke.bold ? 'bold' : 'plain']).fontSize(sizeOf(stroke));
  doc
    .save()
    .translate(stroke.at[0], height - stroke.at[1])
    .rotate(-stroke.rotationDeg);
  const left = -BEFORE[stroke.anchor] * doc.widthOfString(stroke.text, { lineBreak: false });
  doc.text(stroke.text, left, 0, { lineBreak: false, baseline: 'alphabetic' });
  doc.restore();
}

const sizeOf = (stroke: TextStroke): number => stroke.height / CAPITAL;

/** What share of a text stands before the place it is put at. */
const BEFORE = { start: 0, middle: 0.5, end: 1 } as const satisfies Record<TextStroke['anchor'], number>;
