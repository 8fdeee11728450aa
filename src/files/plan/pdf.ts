import { zlibSync } from 'fflate';
import type { PrintScale, Sheet } from '../../drawing/index.js';
import type { PlanFonts } from '../made/index.js';
import { joined } from './joined.js';
import { inkOf } from './pdf-ink.js';
import { fontsOnPage, type Letters, numberLetters, PDF_FONTS } from './pdf-letters.js';
import { taggedReading } from './pdf-tags.js';
import { sfntOf } from './woff.js';

/** Points in a millimetre. */
const PER_MM = 72 / 25.4;

/** An entry of the outline beside the pages: the sheet it leads to, counted from 0, and entries below it. */
export interface Bookmark {
  readonly title: string;
  readonly sheet: number;
  readonly parts?: readonly Bookmark[];
}

export interface PdfOptions {
  readonly title: string;
  readonly fonts: PlanFonts;
  readonly bookmarks?: readonly Bookmark[];
  /** Everything is drawn larger or smaller, so that a printer with these errors prints it true. */
  readonly printScale?: PrintScale;
  /** Numbered first: files that begin with the same ones share what their sheets share. */
  readonly letters?: Letters;
}

/**
 * Sheets as a PDF file at their true size, a page each, exactly as large as the sheet.
 *
 * It can be listened to: headings, texts, lists and tables in the order they are read, a sentence for every figure, frames and title blocks
 * left out (ISO 32000-1, 14.8). Readers are told to print at actual size (`PrintScaling None`). No clock and no chance: the same sheets give the same bytes.
 */
export async function pdf(
  sheets: readonly Sheet[],
  { title, fonts, bookmarks = [], printScale, letters }: PdfOptions,
): Promise<Uint8Array> {
  const { default: PDFDocument } = await import('pdfkit');
  const doc = new PDFDocument({
    autoFirstPage: false,
    pdfVersion: '1.7',
    tagged: true,
    lang: 'en',
    // no other font finds its way into the file
    font: null as never,
    info: { Title: title, CreationDate: new Date(0), Producer: 'tenonwright', Creator: 'tenonwright' },
  });
  packedAlike(doc);
  // a plain object would be written as a dictionary the library cannot end
  const root = (doc as unknown as { _root: { data: Record<string, unknown> } })._root;
  root.data.ViewerPreferences = doc.ref({ PrintScaling: 'None', DisplayDocTitle: true });
  const whole = collected(doc);
  doc.registerFont(PDF_FONTS.plain, unpacked(fonts.plain, fonts.unzip) as never);
  doc.registerFont(PDF_FONTS.bold, unpacked(fonts.bold, fonts.unzip) as never);
  if (letters) numberLetters(doc, letters);
  const reading = taggedReading(doc, inkOf(doc));
  const places = bookmarksBySheet(bookmarks);
  for (const [i, sheet] of sheets.entries()) {
    doc.addPage({ size: [sheet.width * PER_MM, sheet.height * PER_MM], margin: 0 });
    fontsOnPage(doc);
    for (const open of places.get(i) ?? []) open(doc);
    doc.save().scale(PER_MM);
    if (printScale) corrected(doc, sheet, printScale);
    reading.draw(sheet);
    doc.restore();
  }
  reading.end();
  doc.end();
  return whole;
}

/** Fonts unpacked before: one run makes several files with the same. */
const known = new WeakMap<Uint8Array, Uint8Array>();

function unpacked(woff: Uint8Array, unzip: PlanFonts['unzip']): Uint8Array {
  const font = known.get(woff) ?? sfntOf(woff, unzip);
  known.set(woff, font);
  return font;
}

/** An object of the library's whose content is packed when it ends. */
interface Packable {
  compress: boolean;
  buffer: Uint8Array[];
  finalize(): void;
}

/** In Node the library packs with the system's deflate, in a page with another: one for both, so that both write the same bytes. */
function packedAlike(doc: PDFKit.PDFDocument): void {
  const ref = doc.ref.bind(doc);
  doc.ref = (data) => {
    const made = ref(data);
    const packable = made as unknown as Packable;
    const finalize = packable.finalize.bind(packable);
    packable.finalize = () => {
      if (packable.compress && packable.buffer.length > 0)
        packable.buffer = [zlibSync(joined(packable.buffer))];
      packable.compress = false;
      finalize();
    };
    return made;
  };
}

/** Stretched about the middle of the page, each way by what the printer takes away. */
function corrected(doc: PDFKit.PDFDocument, { width, height }: Sheet, { short, long }: PrintScale): void {
  const [x, y] = width <= height ? [1 / short, 1 / long] : [1 / long, 1 / short];
  doc.transform(x, 0, 0, y, (width / 2) * (1 - x), (height / 2) * (1 - y));
}

type Opening = (doc: PDFKit.PDFDocument) => void;

/** What the outline gets when each sheet's page is added; an entry points to the page that is current then. */
function bookmarksBySheet(bookmarks: readonly Bookmark[]): ReadonlyMap<number, readonly Opening[]> {
  const places = new Map<number, Opening[]>();
  const entries = new Map<Bookmark, PDFKit.PDFOutline>();
  const walk = (list: readonly Bookmark[], above: Bookmark | undefined): void => {
    for (const entry of list) {
      const open: Opening = (doc) => {
        const under = above ? entries.get(above)! : doc.outline;
        entries.set(entry, under.addItem(entry.title, { expanded: false }));
      };
      places.set(entry.sheet, [...(places.get(entry.sheet) ?? []), open]);
      walk(entry.parts ?? [], entry);
    }
  };
  walk(bookmarks, undefined);
  return places;
}

const collected = (doc: PDFKit.PDFDocument): Promise<Uint8Array> =>
  new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('error', reject);
    doc.on('end', () => resolve(joined(chunks)));
  });
