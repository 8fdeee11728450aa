import type { Design } from '../../assembly/index.js';
import { type Blank, type Board, stockVolume } from '../../board/index.js';
import { massOf, materialNames, sheetNames } from '../../tables/index.js';
import type { Shop } from '../at-hand/index.js';
import {
  type BoardEnds,
  type BoardKind,
  boardEnds,
  boardKinds,
  boardMarks,
  markWords,
  type OutlineTemplate,
} from '../boards/index.js';
import type { Aid } from '../holding/index.js';
import type { TestBlank } from '../set-up/index.js';
import type { StripPlan } from '../tenons/index.js';
import { markOf } from '../words/index.js';
import { type RoughSize, roughSize } from './rough-size.js';

/** What a cut list is made from. */
export interface CutListRequest {
  readonly design: Design;
  readonly shop: Shop;
  /** Of the finished boards by their ids, measured on the solids, mm³. */
  readonly volumes: ReadonlyMap<string, number>;
  readonly aids?: readonly Aid[];
  readonly templates?: readonly OutlineTemplate[];
  readonly testBlanks?: readonly TestBlank[];
  readonly strips?: readonly StripPlan[];
  /** Length left on a blank beyond its ends until its mortises are cut, by board id, mm. */
  readonly horns?: ReadonlyMap<string, number>;
}

/** One line of the cut list: pieces that are alike. Lengths mm, volumes mm³, mass kg, all of one piece. */
export interface CutRow {
  readonly kind: 'board' | 'aid' | 'template' | 'test blank' | 'tenon strip';
  /** Written on the pieces, one for each. */
  readonly marks: readonly string[];
  readonly markWords: string;
  readonly name: string;
  /** What must be done to it first, and its name without that. */
  readonly first?: { readonly called: string; readonly words: readonly string[] };
  /** Ids, and what each is called; empty for pieces that are no boards. */
  readonly boards: readonly string[];
  readonly names: readonly string[];
  readonly count: number;
  readonly material: string;
  /** From what lies about in any shop: not on the lumber, not in the wood to buy. */
  readonly scrap: boolean;
  readonly finished: Blank;
  /** Undefined when the shop file gives no rough allowance: not verified. */
  readonly rough: RoughSize | undefined;
  readonly ends: BoardEnds | undefined;
  readonly handed: boolean;
  readonly mirrorOf: string | undefined;
  readonly cut: CutWhen;
  readonly blankVolume: number;
  /** Finished, every mortise, hole and slot cut. */
  readonly volume: number;
  /** Undefined for a material without a density in the tables. */
  readonly massKg: number | undefined;
}

export type CutWhen =
  | { readonly when: 'cut now' }
  | { readonly when: 'cut to fit'; readonly afterStep: number };

/** The words of the list: `cut to fit after step 7`. */
export const cutWords = (cut: CutWhen): string =>
  cut.when === 'cut now' ? 'cut now' : `cut to fit after step ${cut.afterStep}`;

/**
 * Every piece to be cut: the boards (equal ones on one line, a board and its mirror image never), the aids, the templates,
 * the test blanks and the strips the tenons come from.
 */
export function cutList(request: CutListRequest): readonly CutRow[] {
  const { design, aids = [], templates = [], testBlanks = [], strips = [] } = request;
  const boards = design.boards.map(({ board }) => board);
  const pieces = [...boards, ...aids.map(({ board }) => board), ...templates];
  const marks = boardMarks(pieces.map(({ id }) => id));
  return [
    ...boardKinds(boards).map((kind) => boardRow(kind, marks, request)),
    ...aids.map((aid) => aidRow(aid, marks, request)),
    ...templates.map((template) => templateRow(template, marks)),
    ...testBlanks.map((blank, i) => testRow(blank, markOf('test blank', i))),
    ...strips.flatMap((plan) => stripRows(plan, request)),
  ];
}

/**
 * The rows once the order of work is known: boards that are cut to fit the work wait for their step, all others are cut now.
 *
 * @param fitAfter by board id, the number of the step that must be done first
 */
export const cutToFit = (rows: readonly CutRow[], fitAfter: ReadonlyMap<string, number>): readonly CutRow[] =>
  rows.map((row) => {
    const steps = row.kind === 'board' ? row.boards.flatMap((id) => fitAfter.get(id) ?? []) : [];
    return steps.length === 0 ? row : { ...row, cut: { when: 'cut to fit', afterStep: Math.max(...steps) } };
  });

type Marks = ReadonlyMap<string, string>;

function boardRow(
  { boards, handed, mirrorOf }: BoardKind,
  marks: Marks,
  { shop, volumes, horns }: CutListRequest,
): CutRow {
  const board = boards[0]!;
  const volume = volumes.get(board.id);
  if (volume === undefined) throw new RangeError(`the volume of board ${board.id} was not measured`);
  const horn = Math.max(0, ...boards.map(({ id }) => horns?.get(id) ?? 0));
  return {
    ...piece('board', board, volume),
    name: [...new Set(boards.map(({ name }) => name))].join(', '),
    marks: boards.map(({ id }) => marks.get(id)!),
    markWords: boards.map(({ id }) => markWords(marks.get(id)!)).join('; '),
    boards: boards.map(({ id }) => id),
    names: boards.map(({ name }) => name),
    count: boards.length,
    rough: roughSize(board.blank, board.material, shop, { horn }),
    ends: boardEnds(board),
    handed,
    mirrorOf,
  };
}

function aidRow({ board, purpose, count, handed }: Aid, marks: Marks, { shop }: CutListRequest): CutRow {
  return {
    ...piece('aid', board, stockVolume(board).volume),
    ...(sheetNames.includes(board.material) ? {} : scrapOf(SCRAP.aid)),
    name: `${board.name}: ${purpose}`,
    marks: [marks.get(board.id)!],
    markWords: `${marks.get(board.id)!}${handed ? ', left and right ones marked' : ''}`,
    boards: [board.id],
    count,
    rough: sheetNames.includes(board.material)
      ? roughSize(board.blank, board.material, shop)
      : asFound(board.blank),
    ends: boardEnds(board),
    handed,
  };
}

function templateRow({ id, boards, material, ...size }: OutlineTemplate, marks: Marks): CutRow {
  const { length, width, thickness } = size;
  const finished = { length, width, thickness };
  return {
    ...plain('template', `outline template for ${boards.join(', ')}`, material, finished),
    marks: [marks.get(id)!],
    markWords: marks.get(id)!,
    boards,
    count: 1,
    rough: { size: finished, allowances: [] },
  };
}

function testRow(blank: TestBlank, mark: string): CutRow {
  const { material, length, width, thickness, count, setups, sawn } = blank;
  const finished = { length, width, thickness };
  const called = `test blank for ${setups.join(', ')}`;
  const words = sawn.map(({ setup, like }) => `for ${setup} sawn like ${like.join(' and ')}`);
  return {
    ...plain('test blank', called, material, finished),
    name: [called, ...words].join('; '),
    first: { called, words },
    ...scrapOf(SCRAP.blank),
    marks: [mark],
    markWords: mark,
    count,
    rough: asFound(finished),
  };
}

/** Strips of one length together. */
function stripRows(plan: StripPlan, { shop }: CutListRequest): readonly CutRow[] {
  const { material, width, thickness, strips, marks } = plan;
  return [...new Set(strips.map((strip) => strip.length))].map((length) => {
    const finished = { length, width, thickness };
    return {
      ...plain('tenon strip', `strip for tenons ${marks.join(', ')}`, material, finished),
      marks,
      markWords: `${marks.join(' ')}, arrow along the grain`,
      count: strips.filter((strip) => strip.length === length).length,
      rough: roughSize(finished, material, shop, { endsToSquare: false }),
    };
  });
}

const plain = (kind: CutRow['kind'], name: string, material: string, finished: Blank) => {
  const volume = finished.length * finished.width * finished.thickness;
  return {
    kind,
    name,
    material,
    scrap: false,
    finished,
    boards: [],
    names: [],
    ends: undefined,
    handed: false,
    mirrorOf: undefined,
    cut: { when: 'cut now' } as const,
    blankVolume: volume,
    volume,
    massKg: massOf(volume, material),
  };
};

/** What aids and test blanks are made of: nothing that has to be bought. */
const SCRAP = {
  aid: 'scrap: any sound wood, plywood or fibreboard',
  blank: 'scrap: sound wood about as hard as the work',
} as const;

const scrapOf = (material: string) => ({ material, scrap: true, massKg: undefined });

/** Scrap is taken as it is found and brought to size: nothing is added to it. */
const asFound = (size: Blank): RoughSize => ({ size, allowances: [] });

const piece = (kind: CutRow['kind'], board: Board, volume: number) => ({
  ...plain(kind, board.name, board.material, board.blank),
  volume,
  massKg: materialNames.includes(board.material) ? massOf(volume, board.material) : undefined,
});
