import type { Board } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import { boundsOf, obround, type Region, segments } from '../../profile/index.js';
import {
  boardMarks,
  type CardCut,
  faceWords,
  type LineMark,
  type MarkedOut,
  type SetupCard,
} from '../../shop/index.js';
import type { DrawnFigure } from '../flow/index.js';
import {
  arrowHead,
  type Dimension,
  type DrawingUnits,
  disc,
  entitiesBox,
  labelAt,
  letters,
  movedEntities,
  path,
  type Room,
  roomOf,
  type SheetEntity,
  type Stroke,
  sizeRows,
  stroke,
} from '../sheet/index.js';

/** The largest face, mm on the sheet, and the widest figure with its words: an upright page. */
const MOST: readonly [width: number, height: number] = [62, 46];
const WIDEST = 176;

/**
 * How a turned mortise of a card is marked out, on the face it enters seen from above, the grain to the right.
 *
 * @returns undefined when the card does not cut that mortise, or it is not turned
 */
export function markingFigure(
  card: SetupCard,
  boards: readonly Board[],
  { board: id, mortise }: Pick<CardCut, 'board' | 'mortise'>,
  units: DrawingUnits,
): DrawnFigure | undefined {
  const cut = card.cuts.find((one) => one.board === id && one.mortise === mortise);
  const board = boards.find((one) => one.id === id);
  if (!board || !cut?.marked) return undefined;
  const { marked } = cut;
  const mark = boardMarks(boards.map((one) => one.id)).get(id);
  const number = board.mortises.findIndex((one) => one.id === mortise) + 1;
  const title = `${mark} M${number}: ${faceWords(board, cut.face)} from above`;
  const figure = (most: number) => figureOf(title, cut, marked, card, board, units, most);
  // words keep their size, so the face gives way
  const whole = figure(MOST[0]);
  return whole.width > WIDEST ? figure(MOST[0] - (whole.width - WIDEST)) : whole;
}

function figureOf(
  title: string,
  cut: CardCut,
  marked: MarkedOut,
  card: SetupCard,
  board: Board,
  units: DrawingUnits,
  most: number,
): DrawnFigure {
  const { mouth, along, centreLine, guideEdge } = marked.drawn;
  const size = boundsOf(mouth.flat());
  const factor = Math.min(most / (size.maxX - size.minX), MOST[1] / (size.maxY - size.minY));
  const p = ([x, y]: Vec2): Vec2 => [x * factor, y * factor];
  const lines: readonly SheetEntity[] = [
    ...mouth.map((loop) => path('visible', loop.map(p), true)),
    stroke('centre', p(centreLine[0]), p(centreLine[1])),
    ...(guideEdge ? [stroke('hidden', p(guideEdge[0]), p(guideEdge[1]))] : []),
    ...mortise(card, along, factor),
  ];
  const spans = [
    ...spansOf(mouth, centreLine, marked.centreLine, 'centre line', OUT),
    ...(guideEdge && marked.guideEdge
      ? spansOf(mouth, guideEdge, marked.guideEdge, "guide's edge", 2 * OUT)
      : []),
  ].map((span) => ({ ...span, corner: p(span.corner), mark: p(span.mark) }));
  const rules = spans.map((span) => rule(span));
  const room = roomOf([...lines, ...rules.flat()]);
  const drawn: readonly SheetEntity[] = [
    ...lines,
    ...spans.map(({ mark }) => ({ ...disc('visible', mark, 0.7), fill: 'ink' as const })),
    ...spans.map(({ told: one, what, corner, mark, out, far }, i): Dimension => {
      const middle = between(corner, mark);
      const at: Vec2 = [middle[0] + out[0] * far, middle[1] + out[1] * far];
      const text = `${said(one.at, units)}${one.fromHorn > 0 ? ' with the horn' : ''}`;
      const words = labelAt(room, at, text, 1, { leader: 'from afar' });
      return dimension(`${what} on the ${one.on}, from the ${one.from}`, one.at, [...rules[i]!, ...words]);
    }),
    middleAt(room, cut, board, units),
    ...(guideEdge ? labelAt(room, p(between(...guideEdge)), 'guide', 1, { leader: 'from afar' }) : []),
  ];
  const box = entitiesBox(drawn);
  const heading = letters([box.minX, box.maxY + 2], title, { bold: true });
  const whole = entitiesBox([...drawn, heading]);
  return {
    kind: 'drawn',
    said: `${title}: the face with its marks along both arrises, each measured from an end.`,
    width: whole.maxX - whole.minX,
    height: whole.maxY - whole.minY + 3,
    draw: ([x, y]) => movedEntities([...drawn, heading], [x - whole.minX, y - whole.minY]),
  };
}

const between = (a: Vec2, b: Vec2): Vec2 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** How far outside the face its dimensions stand, mm on the sheet. */
const OUT = 5;

/** A mark's way along its arris from the corner it is measured from. */
interface Span {
  readonly told: LineMark;
  readonly what: string;
  readonly corner: Vec2;
  readonly mark: Vec2;
  /** Unit, out of the face. */
  readonly out: Vec2;
  readonly far: number;
}

function spansOf(
  mouth: Region,
  points: readonly [Vec2, Vec2],
  marks: MarkedOut['centreLine'],
  what: string,
  far: number,
): readonly Span[] {
  const sides = mouth.flatMap((loop) => loop.map((a, i) => [a, loop[(i + 1) % loop.length]!] as const));
  return points.flatMap((mark, i): Span[] => {
    const told = marks[i]!;
    const off = ([a, b]: readonly [Vec2, Vec2]) => away(a, mark) + away(mark, b) - away(a, b);
    const side = sides.toSorted((p, q) => off(p) - off(q))[0];
    if (!side) return [];
    // the corner is the end of the arris that lies as far off as is told
    const [end, other] = side.toSorted(
      (p, q) => Math.abs(away(p, mark) - told.at) - Math.abs(away(q, mark) - told.at),
    ) as [Vec2, Vec2];
    const run = away(end, other);
    const [x, y] = [(end[0] - other[0]) / run, (end[1] - other[1]) / run];
    const outwards = Math.sign(-y * mark[0] + x * mark[1]) || 1;
    const corner: Vec2 = [mark[0] + x * told.at, mark[1] + y * told.at];
    return [{ told, what, corner, mark, out: [-y * outwards, x * outwards], far }];
  });
}

const away = (a: Vec2, b: Vec2): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** The dimension line beside an arris with its two ends; none for a mark that is the corner itself. */
function rule({ corner, mark, out, far }: Span): readonly Stroke[] {
  if (away(corner, mark) < 0.5) return [];
  const at = ([x, y]: Vec2, by: number): Vec2 => [x + out[0] * by, y + out[1] * by];
  const [from, to] = [at(corner, far), at(mark, far)];
  return [
    stroke('dimension', at(corner, 1), at(corner, far + 1)),
    stroke('dimension', at(mark, 1), at(mark, far + 1)),
    stroke('dimension', from, to),
    arrowHead(from, to, 1.6),
    arrowHead(to, from, 1.6),
  ];
}

/** The middle of the mortise, told along the centre line from its first mark. */
function middleAt(room: Room, cut: CardCut, board: Board, units: DrawingUnits): Dimension {
  const text = `middle ${said(cut.centre, units)} along the line from ${short(board, cut.from)}`;
  return dimension(
    `middle along the centre line from its first mark, on the ${cut.from}`,
    cut.centre,
    labelAt(room, [0, 0], text, 3, { leader: 'always' }),
  );
}

/** A face's name in a drawing: `ref. edge`. */
const short = (board: Board, id: string): string =>
  faceWords(board, id).replace('reference', 'ref.').replace('opposite', 'opp.');

const dimension = (what: string, value: number, parts: readonly Stroke[]): Dimension => ({
  kind: 'dimension',
  what,
  value,
  unit: 'mm',
  parts,
});

const said = (mm: number, units: DrawingUnits): string => sizeRows(mm, units).join(' ');

/** The mortise about the origin, turned along a direction. */
function mortise({ mortiseLength, cutter }: SetupCard, [c, s]: Vec2, factor: number): readonly Stroke[] {
  const p = ([x, y]: Vec2): Vec2 => [factor * (c * x - s * y), factor * (s * x + c * y)];
  const turnDeg = (Math.atan2(s, c) * 180) / Math.PI;
  return segments(obround({ length: mortiseLength, width: cutter })).map((piece): Stroke => {
    if (piece.kind === 'line') return stroke('visible', p(piece.from), p(piece.to));
    const { centre, radius, startDeg, includedDeg, sense } = piece;
    return {
      kind: 'arc',
      line: 'visible',
      centre: p(centre),
      radius: radius * factor,
      startDeg: turnDeg + (sense === 'clockwise' ? startDeg - includedDeg : startDeg),
      sweepDeg: includedDeg,
    };
  });
}
