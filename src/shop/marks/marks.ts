import type { Design } from '../../assembly/index.js';
import { type Board, type FaceId, faceFrame, faces, type Mortise, planeRegion } from '../../board/index.js';
import { cross, dot, pointOut, settledLength, unit, type Vec2, type Vec3 } from '../../frame/index.js';
import { NOISE, SAME_MARK } from '../../tolerances.js';
import { boardMarks, type Hand, handsOf } from '../boards/index.js';
import type { LineMark } from '../holding/index.js';
import type { CardCut, MarkedOut, SetupCard } from '../set-up/index.js';
import { faceWords, markOf } from '../words/index.js';

export type StickMarkKind =
  | 'board end'
  | 'centre'
  | 'mortise end'
  | 'guide edge'
  | 'long point'
  | 'short point';

/** One line across a story stick; mm from its zero end. */
export interface StickMark {
  readonly at: number;
  readonly kind: StickMarkKind;
  /** `M2` for the second mortise of the board, as on its template; the face's name for a point of an end. */
  readonly label: string;
}

/** A full-size strip laid on boards of one family, its zero end at the named face. Lengths mm. */
export interface StoryStick {
  /** Boards it serves: their marks on the wood, and their hands. */
  readonly boards: readonly { readonly id: string; readonly mark: string; readonly hand: Hand | undefined }[];
  readonly direction:
    | 'along the grain'
    | 'across the grain'
    | 'through the thickness'
    | 'along the centre line';
  /** In words: `reference edge`. */
  readonly from: string;
  /** Size of the board in that direction, or of the face for a slanted one. */
  readonly length: number;
  /** From zero on. */
  readonly marks: readonly StickMark[];
  /** Set-up cards whose mortises it marks. */
  readonly setups: readonly string[];
}

/** The story sticks of a design: a strip for each board and direction; boards with the same marks share one. */
export function storySticks(design: Design, cards: readonly SetupCard[]): readonly StoryStick[] {
  const hands = handsOf(design);
  const marks = boardMarks(design.boards.map(({ board }) => board.id));
  const sticks: StoryStick[] = [];
  for (const { board } of design.boards) {
    const who = { id: board.id, mark: marks.get(board.id)!, hand: hands.get(board.id) };
    for (const stick of sticksOf(board, cards)) {
      const same = sticks.findIndex((one) => alike(one, stick));
      if (same < 0) sticks.push({ ...stick, boards: [who] });
      else if (sticks[same]!.boards.at(-1)!.id !== who.id)
        sticks[same] = { ...sticks[same]!, boards: [...sticks[same]!.boards, who] };
    }
  }
  return sticks;
}

type Bare = Omit<StoryStick, 'boards'>;

/** A line along which marks are told from a face. */
interface Line {
  readonly from: FaceId;
  readonly along: Vec3;
  readonly marks: readonly StickMark[];
  readonly setup: string | undefined;
  /** The mortise it runs along (`x`) or across (`y`). */
  readonly of?: { readonly mortise: Mortise; readonly axis: 0 | 1 };
  /** From arris to arris, for a line told by its marks. */
  readonly chord?: number | undefined;
}

function sticksOf(board: Board, cards: readonly SetupCard[]): readonly Bare[] {
  const lines = [
    ...cards.flatMap((card) =>
      card.cuts.filter((cut) => cut.board === board.id).flatMap((cut) => linesOf(board, card, cut)),
    ),
    ...endPoints(board),
  ];
  const groups: Line[][] = [];
  for (const line of lines) {
    const same = groups.find(
      ([first]) => first!.from === line.from && Math.abs(dot(first!.along, line.along)) > 1 - NOISE,
    );
    if (same) same.push(line);
    else groups.push([line]);
  }
  return groups.map((group) => stickOf(board, group));
}

/** The marks of one mortise: along it, and across it when a guide or a template is set by them. */
function linesOf(board: Board, card: SetupCard, cut: CardCut): readonly Line[] {
  const at = board.mortises.findIndex(({ id }) => id === cut.mortise);
  const mortise = board.mortises[at] as Mortise;
  const label = markOf('mortise', at);
  const horn = cut.horn > 0 ? cut.horn / Math.abs(mortise.at.x[0]) : 0;
  const along: Line = {
    from: cut.from,
    along: mortise.at.x,
    of: { mortise, axis: 0 },
    chord: cut.marked && chordOf(cut.marked.drawn.centreLine),
    setup: card.id,
    marks: [
      { at: cut.ends[0] - horn, kind: 'mortise end', label },
      { at: cut.centre - horn, kind: 'centre', label },
      { at: cut.ends[1] - horn, kind: 'mortise end', label },
    ],
  };
  if (cut.marked) return [along, ...arrisLines(board, card, cut.marked, mortise, at)];
  if (!cut.across) return [along];
  const guide: readonly StickMark[] =
    cut.guideEdge === undefined || cut.guideEdge < cut.across.horn
      ? []
      : [{ at: cut.guideEdge - cut.across.horn, kind: 'guide edge', label: markOf('guide edge', at) }];
  const across: Line = {
    from: cut.across.from,
    along: mortise.at.y,
    of: { mortise, axis: 1 },
    setup: card.id,
    marks: [{ at: cut.across.centre - cut.across.horn, kind: 'centre', label }, ...guide],
  };
  return [along, across];
}

const chordOf = ([p, q]: readonly [Vec2, Vec2]): number => Math.hypot(q[0] - p[0], q[1] - p[1]);

/** The marks of a turned mortise's lines, each along its arris. A mark on or from a horn's end has no finished wood to lie on. */
function arrisLines(
  board: Board,
  { id }: SetupCard,
  { centreLine, guideEdge }: MarkedOut,
  mortise: Mortise,
  index: number,
): readonly Line[] {
  const lineOf = (mark: LineMark, kind: 'centre' | 'guide edge'): Line[] => {
    const [on, from] = [faceFrame(board, mark.on), faceFrame(board, mark.from)];
    if (!on || !from || mark.onHorn > 0 || mark.fromHorn > 0) return [];
    const letter = kind === 'centre' ? 'M' : 'G';
    const label = `${letter}${index + 1} on ${faceWords(board, mark.on)}`;
    const along = unit(cross(mortise.at.z, on.z));
    return [{ from: mark.from, along, setup: id, marks: [{ at: mark.at, kind, label }] }];
  };
  return [
    ...centreLine.flatMap((mark) => lineOf(mark, 'centre')),
    ...(guideEdge ?? []).flatMap((mark) => lineOf(mark, 'guide edge')),
  ];
}

/** Long and short point of each angled end, along the grain. */
function endPoints(board: Board): readonly Line[] {
  return faces(board)
    .filter(({ grain, frame: { z } }) => grain === 'end' && Math.abs(z[0]) < 1 - NOISE)
    .flatMap((face): Line[] => {
      const xs = face.region.flatMap((loop) => loop.map(([x, y]) => pointOut(face.frame, [x, y, 0])[0]));
      const [least, most] = [Math.min(...xs), Math.max(...xs)];
      const opposite = face.frame.z[0] > 0;
      const label = faceWords(board, face.id);
      return [
        {
          from: 'reference-end',
          along: [1, 0, 0],
          setup: undefined,
          marks: [
            { at: least, kind: opposite ? 'short point' : 'long point', label },
            { at: most, kind: opposite ? 'long point' : 'short point', label },
          ],
        },
      ];
    });
}

function stickOf(board: Board, group: readonly Line[]): Bare {
  const { from, along } = group[0]!;
  const [x, y, z] = along.map(Math.abs) as [number, number, number];
  const direction =
    x > 1 - NOISE
      ? 'along the grain'
      : y > 1 - NOISE
        ? 'across the grain'
        : z > 1 - NOISE
          ? 'through the thickness'
          : 'along the centre line';
  const length = sizeAlong(board, group, direction);
  const marks: StickMark[] = [
    { at: 0, kind: 'board end', label: '' },
    { at: length, kind: 'board end', label: '' },
    ...group.flatMap((line) => line.marks),
  ];
  return {
    direction,
    from: faceWords(board, from),
    length,
    marks: marks
      // at one place as they are listed: a board's end before the point that lies on it
      .toSorted((a, b) => settledLength(a.at) - settledLength(b.at))
      .filter((mark, i, all) => i === all.findIndex((one) => same(one, mark))),
    setups: [...new Set(group.flatMap(({ setup }) => setup ?? []))],
  };
}

const same = (a: StickMark, b: StickMark): boolean =>
  a.kind === b.kind && a.label === b.label && Math.abs(a.at - b.at) < SAME_MARK;

/** How long the wood is on a stick's line. */
function sizeAlong(board: Board, group: readonly Line[], direction: StoryStick['direction']): number {
  const { length, width, thickness } = board.blank;
  if (direction === 'along the grain') return length;
  if (direction === 'across the grain') return width;
  if (direction === 'through the thickness') return thickness;
  // on a slanted face or line: as far as it goes
  const chords = group.flatMap(({ chord }) => chord ?? []);
  if (chords.length > 0) return Math.max(...chords);
  const { mortise, axis } = group.find(({ of }) => of)?.of ?? {};
  if (!mortise || axis === undefined)
    return Math.max(...group.flatMap((line) => line.marks.map(({ at }) => at)));
  const reach = planeRegion(board, mortise.at)
    .flat()
    .map((point) => point[axis]);
  return Math.max(...reach) - Math.min(...reach);
}

function alike(a: Bare, b: Bare): boolean {
  return (
    a.direction === b.direction &&
    a.from === b.from &&
    Math.abs(a.length - b.length) < SAME_MARK &&
    a.marks.length === b.marks.length &&
    a.marks.every(
      (mark, i) => mark.kind === b.marks[i]!.kind && Math.abs(mark.at - b.marks[i]!.at) < SAME_MARK,
    )
  );
}
