import { zlibSync } from 'fflate';
import type { Sheet, SheetEntity, Stroke } from '../../drawing/index.js';
import { joined } from './joined.js';
import { type Letters, lettersSoFar, numberLetters } from './pdf-letters.js';
import { drawStrokes } from './pdf-strokes.js';

type Doc = PDFKit.PDFDocument;

/** A stream of the library's. */
interface Stream {
  compress: boolean;
  buffer: Uint8Array[];
  end(): void;
}

/** What the library keeps of a page. */
interface PageInside {
  content: Stream;
  readonly dictionary: { readonly data: Record<string, unknown> };
  write(bytes: Uint8Array): void;
}

/** What was written of a body: its strokes in the order they were asked for, the whole, and the whole packed. */
interface Pressed {
  readonly texts: (Uint8Array | undefined)[];
  /** All that were numbered when it was drawn. */
  letters?: Letters;
  raw?: Uint8Array;
  packed?: Uint8Array;
}

/** By the body, and by the letters that were numbered before it: where they are the same, its own get the same numbers. */
const known = new WeakMap<readonly SheetEntity[], Map<string, Pressed>>();

/** Strokes put on paper. */
export interface Ink {
  /** @param strokes asked for only when they were not drawn for another paper before */
  readonly draw: (strokes: () => readonly Stroke[], height: number) => void;
  /** Draws a sheet, its two parts one after the other when one of them is shared. */
  readonly sheet: (sheet: Sheet, draw: (entities: readonly SheetEntity[], height: number) => void) => void;
}

/**
 * What draws on the current page of a document whose unit is the millimetre, y down.
 *
 * A body that several papers show is written and packed once: each page sets the same bytes down in its own place, as a stream of
 * their own (ISO 32000-1, 7.7.3.3: the contents of a page may be an array).
 */
export function inkOf(doc: Doc): Ink {
  let open: { readonly pressed: Pressed; at: number } | undefined;
  const page = () => doc.page as unknown as PageInside;
  return {
    draw: (strokes, height) => {
      const before = open?.pressed.texts[open.at];
      const text = before ?? drawStrokes(doc, strokes(), height);
      if (text) page().write(text);
      if (!open) return;
      open.pressed.texts[open.at] = text;
      open.at += 1;
    },
    sheet: (sheet, draw) => {
      const { shared } = sheet;
      if (!shared) {
        draw(sheet.entities, sheet.height);
        return;
      }
      const { body, by, height, own } = shared;
      const isMoved = by[0] !== 0 || by[1] !== 0;
      if (isMoved) doc.save().translate(by[0], sheet.height - by[1] - height);
      const files = known.get(body) ?? new Map<string, Pressed>();
      known.set(body, files);
      const letters = JSON.stringify(lettersSoFar(doc));
      const pressed = files.get(letters) ?? { texts: [] };
      files.set(letters, pressed);
      if (pressed.letters) numberLetters(doc, pressed.letters);
      open = { pressed, at: 0 };
      const before = page().content;
      const stream = doc.ref({}) as unknown as Stream;
      page().content = stream;
      draw(body, height);
      open = undefined;
      pressed.letters ??= lettersSoFar(doc);
      pack(stream, pressed);
      const after = doc.ref({}) as unknown as Stream;
      page().content = after;
      page().dictionary.data.Contents = [before, stream, after];
      before.end();
      stream.end();
      if (isMoved) doc.restore();
      draw(own, sheet.height);
    },
  };
}

function pack(stream: Stream, pressed: Pressed): void {
  if (stream.buffer.length === 0) return;
  const raw = joined(stream.buffer);
  if (!pressed.packed || !pressed.raw || !alike(raw, pressed.raw)) {
    pressed.raw = raw;
    pressed.packed = zlibSync(raw);
  }
  stream.buffer = [pressed.packed];
  stream.compress = false;
}

const alike = (one: Uint8Array, other: Uint8Array): boolean =>
  one.length === other.length && one.every((byte, i) => byte === other[i]);
