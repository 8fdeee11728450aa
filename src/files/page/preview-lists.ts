import type { PreviewBox, PreviewData, PreviewPiece } from '../../viewer/index.js';
import { svgText } from '../svg/index.js';

/** A row that goes to something in the picture: its pieces are lit while it is pointed at. */
function row(
  go: string,
  index: number,
  pieces: readonly string[],
  label: string,
  details: readonly string[],
  colour?: string,
  level?: string,
): string {
  const swatch = colour === undefined ? '' : `<i style="background:${colour}" aria-hidden="true"></i>`;
  const lines = details
    .filter((detail) => detail !== '')
    .map((detail) => ` <span>${svgText(detail)}</span>`)
    .join('');
  return `<li><button type="button" data-go="${go}"${level ? ` data-level="${level}"` : ''} data-index="${index}" data-pieces="${svgText(JSON.stringify(pieces))}">${swatch}<strong>${svgText(label)}</strong>${lines}</button></li>`;
}

const list = (rows: readonly string[], tag: 'ul' | 'ol' = 'ul'): string =>
  `<${tag} class="rows">${rows.join('')}</${tag}>`;

/** Sizes of a box on a line for each unit. */
const sizesOf = (box: PreviewBox | undefined): readonly string[] =>
  box
    ? [
        box.sides.map(({ mmText }) => mmText).join(' × '),
        box.sides.map(({ inchText }) => inchText).join(' × '),
      ]
    : [];

/** Findings that pass a sieve, in words and as ways to their places. */
const findingRows = ({ findings }: PreviewData, keep: (level: string) => boolean): string =>
  list(
    findings.flatMap(({ level, text, remedy, basis, pieces }, i) =>
      keep(level)
        ? [row('finding', i, pieces, level, [text, remedy, `basis: ${basis}`], undefined, level)]
        : [],
    ),
  );

/** Errors and warnings: they come before all else. */
export const worryRows = (data: PreviewData): string =>
  data.findings.some(({ level }) => level !== 'note')
    ? findingRows(data, (level) => level !== 'note')
    : `<p>Every check passed${data.findings.length > 0 ? '; there are notes below' : ': no findings'}.</p>`;

/** What is only to be known. */
export const noteRows = (data: PreviewData): string =>
  data.findings.some(({ level }) => level === 'note')
    ? `<h2>Notes</h2>${findingRows(data, (level) => level === 'note')}`
    : '';

/** What is done first, and the steps. */
export function stepRows({ first, steps }: PreviewData): string {
  const before = first.map(({ moving, text }, i) => row('tenons', i, moving, `Tenons ${i + 1}`, [text]));
  const rows = steps.map((step, i) => row('step', i, step.moving, `Step ${i + 1}`, [step.text]));
  return `<p>First glue these tenons in:</p>${list(before, 'ol')}<p>Then:</p>${list(rows, 'ol')}`;
}

/** Boards with their sizes. */
export const boardRows = ({ pieces }: PreviewData): string =>
  list(
    pieces
      .filter(({ role }) => role === 'board')
      .map(({ id, name, note, box, colour }, i) =>
        row('board', i, [id], name, [...sizesOf(box), note], colour),
      ),
  );

/** Hardware, one row for each kind. */
export function hardwareRows({ pieces }: PreviewData): string {
  const kinds = new Map<string, PreviewPiece[]>();
  for (const piece of pieces.filter(({ role }) => role === 'hardware')) {
    kinds.set(piece.name, [...(kinds.get(piece.name) ?? []), piece]);
  }
  return list(
    [...kinds].map(([name, same], i) =>
      row(
        'hardware',
        i,
        same.map(({ id }) => id),
        same.length > 1 ? `${same.length} × ${name}` : name,
        [same[0]!.note],
        same[0]!.colour,
      ),
    ),
  );
}

/** Joints with the clearances measured on them, and their tenons' size. */
export const jointRows = ({ joints, pieces }: PreviewData): string =>
  list(
    joints.map(({ name, tenons, clearances }, i) => {
      const tenon = pieces.find(({ id }) => id === tenons[0]);
      const gaps = clearances.map((one) => `${one.name} ${one.text}`).join(', ');
      const count = tenons.length === 1 ? 'one tenon' : `${tenons.length} tenons, each`;
      return row('joint', i, tenons, name, [count, ...sizesOf(tenon?.box), gaps], tenon?.colour);
    }),
  );
