import {
  type Sheet,
  type SheetEntity,
  type Stroke,
  strokesOf,
  type Table,
  type Tag,
} from '../../drawing/index.js';
import type { Ink } from './pdf-ink.js';

type Doc = PDFKit.PDFDocument;
type Element = PDFKit.PDFStructureElement;

/** Draws sheets so that their content is read in its order, each piece as what it is (structure types of ISO 32000-1, 14.8.4). */
export function taggedReading(
  doc: Doc,
  ink: Ink,
): { readonly draw: (sheet: Sheet) => void; readonly end: () => void } {
  const document = doc.struct('Document');
  doc.addStructure(document);
  // what is still being read, maybe on the next page: a piece by its tag, and the list it is in
  let open: { readonly tag: Tag; readonly element: Element } | undefined;
  let list: { readonly of: object; readonly element: Element } | undefined;

  const closed = () => {
    open?.element.end();
    open = undefined;
  };
  const listClosed = () => {
    closed();
    list?.element.end();
    list = undefined;
  };
  const begun = (parent: Element, type: string, options: { alt?: string; scope?: string } = {}): Element => {
    const element = doc.struct(type, options as never);
    parent.add(element);
    return element;
  };
  const marked = (element: Element, type: string, strokes: () => readonly Stroke[], height: number) => {
    const content = doc.markStructureContent(type);
    ink.draw(() => strokes().map(spaced), height);
    doc.endMarkedContent();
    element.add(content);
  };
  const ornament = (entities: readonly SheetEntity[], height: number) => {
    if (entities.length === 0) return;
    doc.markContent('Artifact', { type: 'Layout' });
    ink.draw(() => strokesOf(entities), height);
    doc.endMarkedContent();
  };

  const table = ({ rows, parts }: Table, height: number) => {
    listClosed();
    ornament(
      parts.filter((part) => part.tag?.role !== 'cell'),
      height,
    );
    const byCell = new Map<string, Stroke[]>();
    for (const part of parts)
      if (part.tag?.role === 'cell') {
        const at = `${part.tag.row} ${part.tag.column}`;
        byCell.set(at, [...(byCell.get(at) ?? []), part]);
      }
    const whole = begun(document, 'Table');
    rows.forEach((cells, row) => {
      const line = begun(whole, 'TR');
      cells.forEach((_, column) => {
        const own = byCell.get(`${row} ${column}`) ?? [];
        const tag = own[0]?.tag;
        const heads = tag?.role === 'cell' ? tag.heads : undefined;
        const type = heads ? 'TH' : 'TD';
        const cell = begun(line, type, heads ? { scope: heads } : {});
        if (own.length > 0) marked(cell, type, () => own, height);
      });
    });
    whole.end();
  };

  const piece = (tag: Tag, entities: readonly SheetEntity[], height: number) => {
    if (open?.tag !== tag) {
      if (tag.role !== 'item' || list?.of !== tag.list) listClosed();
      closed();
      if (tag.role === 'item') {
        list ??= { of: tag.list, element: begun(document, 'L') };
        open = { tag, element: begun(begun(list.element, 'LI'), 'LBody') };
      } else
        open = { tag, element: begun(document, typeOf(tag), tag.role === 'figure' ? { alt: tag.said } : {}) };
    }
    marked(open!.element, typeOf(tag), () => strokesOf(entities), height);
  };

  const inTurn = (entities: readonly SheetEntity[], height: number) => {
    for (const run of runsOf(entities)) {
      const [first] = run;
      if (first?.kind === 'table') table(first, height);
      else if (first?.tag) piece(first.tag, run, height);
      else ornament(run, height);
    }
  };

  return {
    draw: (sheet) => {
      // a sheet of which nothing is told is one picture
      const { shared, title } = sheet;
      const all = (shared?.body ?? sheet.entities).some(
        ({ tag, kind }) => tag !== undefined || kind === 'table',
      );
      const picture: Tag = { role: 'figure', said: `${title}.` };
      ink.sheet(sheet, all ? inTurn : (entities, height) => piece(picture, entities, height));
    },
    end: () => {
      listClosed();
      document.end();
    },
  };
}

/** A row of letters that goes on in the next one ends with a blank, or two words would be read as one. */
const spaced = (stroke: Stroke, i: number, all: readonly Stroke[]): Stroke =>
  stroke.kind === 'text' && stroke.anchor === 'start' && all[i + 1]?.kind === 'text'
    ? { ...stroke, text: `${stroke.text} ` }
    : stroke;

/** Entities that follow one another and are one piece; a table is one by itself. */
function runsOf(entities: readonly SheetEntity[]): readonly (readonly SheetEntity[])[] {
  const runs: SheetEntity[][] = [];
  for (const entity of entities) {
    const last = runs.at(-1);
    const before = last?.[0];
    if (before && before.kind !== 'table' && entity.kind !== 'table' && before.tag === entity.tag)
      last.push(entity);
    else runs.push([entity]);
  }
  return runs;
}

function typeOf(tag: Tag): string {
  switch (tag.role) {
    case 'heading':
      return `H${tag.level}`;
    case 'paragraph':
      return 'P';
    case 'item':
      return 'LBody';
    case 'figure':
      return 'Figure';
    case 'cell':
      return 'TD';
    default:
      return tag satisfies never;
  }
}
