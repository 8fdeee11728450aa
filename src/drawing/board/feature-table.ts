import type { Board, Groove } from '../../board/index.js';
import { faceWords, longSides } from '../../shop/index.js';
import { type DrawingUnits, sizeRows, toolRows } from '../sheet/index.js';
import { bevelAngle } from '../template/index.js';
import { markedFeatures } from './board-features.js';
import { bevelStops } from './board-stops.js';

/** What is measured square to the face it enters is not measured at all. */
const SQUARE = 0.9;

const HEAD = ['', 'cut', 'size', 'depth', 'into', 'from end', 'from edge', 'from face', 'joins'];

/**
 * Everything cut into a board as rows of words: mark, what, size, depth, face, its middle from the reference end, edge and
 * face, and the board it joins. Columns that say nothing are left out. A bevel's row has the angle off square and its long and short point instead.
 *
 * @returns the head and one row for each feature; empty when nothing is cut
 */
export function featureTable(board: Board, units: DrawingUnits): readonly (readonly string[])[] {
  const say = (mm: number) => sizeRows(mm, units).join(' ');
  const tool = (mm: number) => toolRows(mm, units).join(' ');
  const deep = (depth: number | 'through') => (depth === 'through' ? 'through' : say(depth));
  const rows = markedFeatures(board).map(({ mark, kind, of }): readonly string[] => {
    if (kind === 'bevel') {
      const { deg: angle, from } = bevelAngle(of);
      const stops = bevelStops(board).filter((stop) => stop.what.startsWith(`${mark} `));
      const [a, b] = stops.map((stop) => stop.value);
      const place = a === undefined ? '' : b === undefined ? say(a) : `${say(a)} / ${say(b)}`;
      const along = stops[0]?.axis === 0;
      return [
        mark,
        `bevel ${of.id}`,
        `${Math.round(angle * 100) / 100}°${from === 'off square' ? '' : ` ${from}`}`,
        '',
        angle > 0.01 ? `${longSides(of.normal)[0]} longer` : 'square',
        along ? place : '',
        along ? '' : place,
        '',
        '',
      ];
    }
    const where = ([0, 1, 2] as const).map((axis) =>
      Math.abs(of.at.z[axis]) > SQUARE || (kind === 'groove' && runsThrough(of, axis))
        ? ''
        : say(of.at.origin[axis]),
    ) as [string, string, string];
    const size =
      'diameter' in of
        ? `Ø${tool(of.diameter)}${widened(of, say, tool)}`
        : `${tool(of.width)} × ${say(of.length)}`;
    const joins = 'joint' in of ? otherBoard(of.joint, board.id) : '';
    return [
      mark,
      kind === 'groove' && of.rebate ? 'rebate' : kind,
      size,
      deep(of.depth),
      faceName(board, of.face),
      ...where,
      joins,
    ];
  });
  if (rows.length === 0) return [];
  const told = HEAD.map((_, column) => rows.some((row) => row[column] !== ''));
  return [HEAD, ...rows].map((row) => row.filter((_, column) => told[column]));
}

/** A groove from end to end has no place along its run. */
const runsThrough = ({ at, stopped }: Groove, axis: 0 | 1 | 2): boolean =>
  stopped.length === 0 && Math.abs(at.x[axis]) > SQUARE;

/** The other board of a joint, when its id names both. */
function otherBoard(joint: string, board: string): string {
  const names = joint.split('/');
  return names.length === 2 && names.includes(board) ? names.find((name) => name !== board)! : joint;
}

/** A bevel by its mark, any other face by its name. */
function faceName(board: Board, face: string): string {
  const bevel = board.bevels.findIndex((one) => one.id === face);
  if (bevel >= 0) return `bevel B${bevel + 1}`;
  return faceWords(board, face);
}

function widened(
  of: {
    readonly counterbore?: { readonly diameter: number; readonly depth: number };
    readonly countersink?: { readonly diameter: number; readonly angleDeg: number };
  },
  say: (mm: number) => string,
  tool: (mm: number) => string,
): string {
  const bore = of.counterbore
    ? `, bore Ø${tool(of.counterbore.diameter)} × ${say(of.counterbore.depth)}`
    : '';
  const sink = of.countersink ? `, sink Ø${tool(of.countersink.diameter)} ${of.countersink.angleDeg}°` : '';
  return `${bore}${sink}`;
}
