import {
  assemble,
  type Design,
  type FastenRequest,
  type JoinRequest,
  usedFace,
} from '../../assembly/index.js';
import { TenonwrightError } from '../../errors.js';
import type { Tools } from '../../model/index.js';
import { standBoard } from '../boards/index.js';
import type { Reckoning } from '../formulas/index.js';
import { type Box, NoBoard, type Stood, type Trim, userOf } from '../places/index.js';
import {
  atLine,
  FollowsOn,
  type PairEntry,
  type Phrase,
  type PieceTree,
  Problem,
  type Problems,
  phraseOf,
  problemWith,
} from '../text/index.js';
import { fastenRequests } from './held.js';
import { joinRequest } from './join-options.js';
import { type Touching, touchingPairs } from './joints.js';
import { mitresOf } from './mitres.js';
import { withPanels } from './panels.js';

/** What a piece is built with. */
export interface PieceValues {
  readonly reckon: Reckoning;
  /** The wood a phrase names: a row of the table. @throws Problem */
  readonly wood: (phrase: Phrase) => string;
  readonly tools: Tools;
}

/** A piece whose boards have their places. */
export interface StoodPiece {
  readonly standing: readonly Stood[];
  /** Neighbours glued edge to edge, with the line that tells their panel. */
  readonly seams: readonly (readonly [a: Stood, b: Stood, line: Phrase])[];
}

/** The most boards and joints of a piece. */
const MOST_BOARDS = 200;
const MOST_JOINTS = 500;

/**
 * The boards of a piece where they stand, in the order of the file, before any joint is cut.
 *
 * @param problems what is wrong with each board is put there, one problem a board
 */
export function standPiece(
  tree: PieceTree,
  { reckon, wood, tools }: PieceValues,
  problems: Problems,
): StoodPiece {
  const size = tree.piece.map((phrase) => reckon.figure(phrase, 'length'));
  const piece: Box = { min: [0, 0, 0], max: [size[0]!, size[1]!, size[2]!] };
  const material = wood(tree.wood);
  const standing: Stood[] = [];
  const seams: StoodPiece['seams'][number][] = [];
  const failed: string[] = [];
  for (const entry of tree.boards) {
    const stood = problems.during(() => {
      const when = entry.keys.get('when');
      if (when && !reckon.yes(phraseOf(when, 'when'))) return true;
      const own = entry.keys.get('wood');
      const of = own ? wood(phraseOf(own, 'wood')) : material;
      const made = withoutFailed(failed, () =>
        standBoard(entry, { standing, piece, reckon, ...seasonOf(tools) }, of),
      );
      for (const { name } of made.boards)
        if (standing.some((one) => one.name === name))
          throw problemWith(entry.name, `two boards are called '${name}'`, 'give each its own name');
      standing.push(...made.boards);
      seams.push(...made.seams.map(([a, b]) => [a, b, entry.name] as const));
      if (standing.length > MOST_BOARDS)
        throw problemWith(entry.name, `the piece has more than ${MOST_BOARDS} boards`, 'take fewer copies');
      return true;
    });
    if (!stood) failed.push(entry.name.value);
  }
  return { standing, seams };
}

const seasonOf = ({ wood: { season } = {} }: Tools) => (season ? { season } : {});

/** A board that is missing because its own line is wrong is told there, and not again where it is named. */
function withoutFailed<T>(failed: readonly string[], work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof NoBoard) || !failed.some((name) => error.mayBe(name))) throw error;
    throw new FollowsOn(error.at, error.length, error.message);
  }
}

/** A joint to be cut, and the line that asks for it. */
interface Asked {
  readonly request: JoinRequest;
  readonly line: Phrase;
}

/**
 * The design of a piece: its boards where they stand, joined.
 *
 * @throws InputError with every problem of the file at once; what the engine refuses besides, led back to its line
 */
export function designOf(tree: PieceTree, values: PieceValues, problems: Problems): Design {
  const { reckon, tools } = values;
  const told = standPiece(tree, values, problems);
  problems.end();
  const mitred = mitredBoards(tree, told.standing, reckon, problems);
  const { standing, captives } = problems.during(() => withPanels(mitred)) ?? {
    standing: mitred,
    captives: [],
  };
  problems.end();
  const joints: Asked[] = [];
  const ask = (entry: PairEntry, pair: Touching) =>
    joints.push({ request: named(joinRequest(entry, pair, standing, reckon, tools), joints), line: entry.a });
  for (const entry of tree.joints)
    problems.during(() => {
      for (const pair of touchingPairs(entry, standing)) ask(entry, pair);
      if (joints.length > MOST_JOINTS)
        throw problemWith(entry.a, `the piece has more than ${MOST_JOINTS} joints`, 'join fewer boards');
    });
  for (const [a, b, line] of told.seams) {
    if (joints.some(({ request }) => isPair(request, a.placed.board.id, b.placed.board.id))) continue;
    problems.during(() => ask({ a: line, b: line, options: new Map() }, { a, b, patches: [] }));
  }
  const fasten: { readonly request: FastenRequest; readonly line: Phrase }[] = [];
  for (const entry of tree.held)
    problems.during(() => {
      for (const request of fastenRequests(entry, standing, reckon)) fasten.push({ request, line: entry.a });
    });
  const user = tree.usedBy && problems.during(() => userOf(tree.usedBy!, reckon));
  const uses = standing.flatMap(({ placed, use: told }) => {
    if (!told) return [];
    const one = { board: placed.board.id, use: told.use };
    if (one.use !== 'none')
      problems.during(() => atLine(told.at.at, told.at.value.length, () => usedFace([placed], one)));
    return [one];
  });
  problems.end();
  const cutters = joints.map(({ request }) => request.options!.cutter!);
  const lines = new Map([
    ...joints.map(({ request, line }): [string, Phrase] => [`joint ${idOf(request)}`, line]),
    ...fasten.map(({ request, line }): [string, Phrase] => [`fastening ${request.held}/${request.to}`, line]),
  ]);
  const design = problems.during(() =>
    ledBack(lines, tree.design, () =>
      assemble({
        name: tree.design.value,
        title: tree.title.value,
        cutter: Math.min(...(cutters.length > 0 ? cutters : tools.cutters)),
        boards: standing.map(({ placed }) => placed),
        joints: joints.map(({ request }) => request),
        fasten: fasten.map(({ request }) => request),
        panels: captives,
        ...seasonOf(tools),
        ...(uses.length > 0 && { uses }),
        ...(user && { user }),
        notes: tree.notes.map(({ value }) => value),
      }),
    ),
  );
  problems.end();
  return design!;
}

/** Boards with the ends of their mitred joints cut. */
function mitredBoards(
  tree: PieceTree,
  told: readonly Stood[],
  reckon: Reckoning,
  problems: Problems,
): readonly Stood[] {
  const trims = new Map<string, { readonly line: Phrase; readonly cuts: Trim[] }>();
  for (const entry of tree.joints)
    problems.during(() => {
      const mitred = entry.options.get('mitred');
      if (!mitred || !reckon.yes(phraseOf(mitred, 'mitred'))) return;
      for (const [name, planes] of mitresOf(entry, told)) {
        const own = trims.get(name) ?? { line: entry.a, cuts: [] };
        trims.set(name, own);
        for (const plane of planes) own.cuts.push({ plane, id: `mitre-${own.cuts.length + 1}` });
      }
    });
  return told.map((board) => {
    const own = trims.get(board.name);
    const placed =
      own &&
      problems.during(() => atLine(own.line.at, own.line.value.length, () => board.trimmedBy(own.cuts)));
    return placed ? { ...board, placed } : board;
  });
}

const isPair = ({ a, b }: JoinRequest, one: string, other: string): boolean =>
  (a === one && b === other) || (a === other && b === one);

const idOf = ({ a, b, options }: JoinRequest): string => options?.id ?? `${a}/${b}`;

/** A second joint of one pair gets an id of its own. */
function named(request: JoinRequest, joints: readonly Asked[]): JoinRequest {
  const same = joints.filter((one) => isPair(one.request, request.a, request.b)).length;
  return same === 0
    ? request
    : { ...request, options: { ...request.options, id: `${request.a}/${request.b}-${same + 1}` } };
}

/** What the engine refuses, told at the line of the joint its text begins with. */
function ledBack<T>(lines: ReadonlyMap<string, Phrase>, otherwise: Phrase, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof Problem || !(error instanceof TenonwrightError)) throw error;
    const found = [...lines].find(
      ([name]) => error.message.startsWith(name) && /^[:.]/.test(error.message.slice(name.length)),
    );
    const { at, value } = found?.[1] ?? otherwise;
    throw new Problem(at, value.length, (say) => error.explain(say));
  }
}
