import type { Design } from '../../assembly/index.js';
import type { Say } from '../../length/index.js';
import type { Known } from '../dimensions/index.js';
import { formulaOf, namesOf, type Quantity, quantityOf } from '../formulas/index.js';
import { ALL_AXES, isSide, placePhrase, SIDES, type Stood, sideOn } from '../places/index.js';
import { type Entry, type Phrase, type PieceTree, Problem, type Said } from '../text/index.js';

/** One line of a file said back: what was told, and what it comes to. */
export interface SaidBack {
  readonly told: string;
  readonly comesTo: string;
}

/** A board of the file as it was understood, with all its copies and images. */
export interface BoardSaidBack {
  readonly name: string;
  readonly line: number;
  /** Their names; none when the board is left out with these values. */
  readonly copies: readonly string[];
  /** What the first of them measures and where it stands; empty for none. */
  readonly summary: string;
  readonly lines: readonly SaidBack[];
}

/** A piece as it was understood. */
export interface PieceSaidBack {
  readonly design: Design;
  /** What can be set, the box it fills, and what is worked out. */
  readonly figures: readonly SaidBack[];
  readonly boards: readonly BoardSaidBack[];
  readonly joints: readonly SaidBack[];
}

/** What is needed to say a piece back. */
interface ToSayBack {
  readonly tree: PieceTree;
  readonly names: Known;
  readonly standing: readonly Stood[];
  readonly design: Design;
  readonly say: Say;
}

/** A piece in words, board by board in the order of its file, and where each figure comes from. */
export const pieceSaidBack = (piece: ToSayBack): PieceSaidBack => ({
  design: piece.design,
  figures: [
    ...piece.tree.dimensions.map(({ name, said }) => ({
      told: `${name.value}: ${said.value.replace(/\s*;.*$/s, '')}`,
      comesTo: piece.names.words.get(name.value) ?? words(piece.names.scope(name.value)!, piece.say),
    })),
    ...piece.tree.piece.map((phrase, axis) => ({
      told: `piece, ${BOX_SIDES[axis]}: ${phrase.value}`,
      comesTo: comesTo('piece', [phrase], piece),
    })),
    ...piece.names.workedOut.map(({ name, formula, figure }) => ({
      told: `${name}: ${formula}`,
      comesTo: words(figure, piece.say),
    })),
  ],
  boards: piece.tree.boards.map(({ name, keys }) => {
    const boards = piece.standing.filter(({ line }) => line === name);
    const [first] = boards;
    return {
      name: name.value,
      line: name.at.line,
      copies: boards.map((board) => board.name),
      summary: first ? summary(first, piece.say) : '',
      lines: [...keys].map(([key, entry]) =>
        lineSaidBack(key, entry, upsideDown(keys) ? boards.slice(0, 1) : boards, piece),
      ),
    };
  }),
  joints: piece.design.joints.map(({ id, tenons }) => ({
    told: id,
    comesTo: tenons[0] ? `${tenons.length} × ${tenonWords(tenons[0], piece.say)}` : 'no tenon',
  })),
});

/** An image upside down has its bottom where the told one has its top. */
const upsideDown = (keys: ReadonlyMap<string, Entry>): boolean =>
  [keys.get('mirrored')].some((entry) => entry && written(entry.said).includes('up-down'));

const BOX_SIDES = ['left to right', 'front to back', 'floor to top'] as const;

const tenonWords = (tenon: Design['joints'][number]['tenons'][number], say: Say): string =>
  `tenon ${[tenon.thickness, tenon.width, tenon.length].map(say.length).join(' × ')}`;

/** `700.0 mm long, 22.0 mm wide, 22.0 mm thick, white ash; it stands from …` */
function summary({ placed, box, leans }: Stood, say: Say): string {
  const { blank, material } = placed.board;
  const stands = ALL_AXES.map(
    (axis) =>
      `${sideOn(axis, -1)} ${say.length(box.min[axis])} to ${sideOn(axis, 1)} ${say.length(box.max[axis])}`,
  ).join(', ');
  return `${say.length(blank.length)} long, ${say.length(blank.width)} wide, ${say.length(blank.thickness)} thick, ${material}; ${leans ? 'leaning, ' : ''}from ${stands}`;
}

function lineSaidBack(key: string, { said }: Entry, boards: readonly Stood[], piece: ToSayBack): SaidBack {
  const where = isSide(key) ? sideStands(key, boards, piece.say) : [];
  const figures = comesTo(key, phrasesIn(said), piece);
  return {
    told: `${key}: ${written(said)}`,
    comesTo: [...where, ...(figures === '' ? [] : [figures])].join('; '),
  };
}

/** `30.0 mm from the left of the piece`; of copies that stand at several heights, each height. */
function sideStands(side: keyof typeof SIDES, boards: readonly Stood[], say: Say): readonly string[] {
  const { axis, sign } = SIDES[side];
  const from = axis === 2 ? 'above the floor' : `from the ${sideOn(axis, -1)} of the piece`;
  const told = boards.map(({ box }) => say.length((sign < 0 ? box.min : box.max)[axis]));
  const all = [...new Set(axis === 2 ? told : told.slice(0, 1))];
  return all.length === 0 ? [] : [`${all.join(', ')} ${from}`];
}

/** Leaves of what was said, keys and lists opened. */
function phrasesIn({ value, at }: Said): readonly Phrase[] {
  if (typeof value === 'string') return [{ value, at }];
  if (value === undefined) return [];
  return value instanceof Map
    ? [...(value as ReadonlyMap<string, Entry>).values()].flatMap(({ said }) => phrasesIn(said))
    : (value as readonly Said[]).flatMap(phrasesIn);
}

/** As it was written, on one line. */
function written({ value }: Said): string {
  if (value === undefined) return '';
  if (typeof value === 'string') return value;
  return value instanceof Map
    ? `{ ${[...(value as ReadonlyMap<string, Entry>)].map(([key, { said }]) => `${key}: ${written(said)}`).join(', ')} }`
    : `[${(value as readonly Said[]).map(written).join(', ')}]`;
}

/** Keys that hold words alone: a board may be called as a dimension is. */
const WORDS: readonly string[] = ['grain', 'face', 'edge', 'like', 'mirrored', 'between', 'evenly', 'wood'];

/** Keys that hold places besides the six sides. */
const PLACES: readonly string[] = ['middle', 'head', 'foot', 'around'];

/** Formulas of phrases, worked out: `apron + 15 is 105 mm`; a figure that is what was written is not said again. */
function comesTo(key: string, phrases: readonly Phrase[], { names, tree, say }: ToSayBack): string {
  if (WORDS.includes(key)) return '';
  const found = phrases.flatMap((phrase) => {
    try {
      const measure = placePhrase(phrase).measure?.formula;
      // the name of a place may be that of a dimension
      if (measure === undefined && (isSide(key) || PLACES.includes(key))) return [];
      const formula = formulaOf(measure ?? phrase);
      if (namesOf(formula).length === 0) return [];
      return [`${formula.told.value} is ${words(quantityOf(formula, names.scope, tree.units), say)}`];
    } catch (error) {
      if (error instanceof Problem) return [];
      throw error;
    }
  });
  return [...new Set(found)].join('; ');
}

/** A figure in the person's units. */
function words({ value, lengths, angles, yes }: Quantity, say: Say): string {
  if (yes) return value === 0 ? 'no' : 'yes';
  if (lengths === 1 && angles === 0) return say.fine(value);
  if (angles === 1 && lengths === 0) return say.angle(value);
  return String(Number(value.toPrecision(6)));
}
