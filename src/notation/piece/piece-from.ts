import type { Design } from '../../assembly/index.js';
import type { Say } from '../../length/index.js';
import { defineModel, type Model, optionName, type Tools } from '../../model/index.js';
import { cutterDiameters, materialNames } from '../../tables/index.js';
import {
  type Dimension,
  dimensionOf,
  holdMusts,
  type Known,
  knownFrom,
  startOf,
} from '../dimensions/index.js';
import { isPlain, reckoning } from '../formulas/index.js';
import { designOf, type PieceValues, standPiece } from '../joints/index.js';
import { didYouMeanWord, type PieceTree, Problem, Problems, problemWith, readPiece } from '../text/index.js';
import { type PieceSaidBack, pieceSaidBack } from './said-back.js';

type Values = Readonly<Record<string, unknown>>;

/** A piece told in a file: a model like any other that can say back what its file tells. */
export interface Piece extends Model {
  /** @throws InputError with all that cannot be */
  saidBack(values: Values, tools: Tools, say: Say): PieceSaidBack;
}

/**
 * A piece told in one plain file, as a model: its dimensions are the parameters.
 *
 * @param text at most 64 KB of YAML
 * @param file its name, for messages
 * @param taken option names a dimension cannot have
 * @throws InputError `piece-refused` with every problem of the file: line, column, the line quoted, what is allowed
 */
export function pieceFrom(text: string, file: string, taken: readonly string[] = []): Piece {
  const problems = new Problems(file, text);
  const tree = readPiece(text, problems);
  const dimensions = (tree?.dimensions ?? []).flatMap(
    (line) => problems.during(() => untaken(dimensionOf(line, tree!.units), taken)) ?? [],
  );
  if (tree && problems.count > 0)
    // what is wrong with boards is told together with it
    builtFrom(tree, dimensions, defaultsOf(dimensions), { cutters: cutterDiameters() }, problems);
  problems.end();
  if (!tree) throw new Error(`${file} was not read, though nothing is wrong with it`);
  const built = (values: Values, tools: Tools) =>
    builtFrom(tree, dimensions, values, tools, new Problems(file, text));
  // a page that is published tells the file's name, never where it lay
  const name = file.replace(/^.*[\\/]/, '');
  const model = defineModel({
    name: tree.design.value,
    title: tree.title.value,
    summary: tree.about?.value ?? `A piece told in ${name}.`,
    parameters: Object.fromEntries(
      dimensions.flatMap(({ parameter, schema }) => (schema ? [[parameter, schema]] : [])),
    ),
    complete: (values) => completed(tree, dimensions, values),
    build: (values, tools) => built(values, tools).design,
  });
  return {
    ...model,
    told: text,
    toldIn: name,
    saidBack(values, tools, say) {
      const { names, given, design } = built(values, tools);
      const { standing } = standPiece(tree, given, new Problems(file, text));
      return pieceSaidBack({ tree, names, standing, design, say });
    },
  };
}

/** @throws InputError with all that cannot be */
function builtFrom(
  tree: PieceTree,
  dimensions: readonly Dimension[],
  values: Values,
  tools: Tools,
  problems: Problems,
): { readonly names: Known; readonly given: PieceValues; readonly design: Design } {
  const names = knownFrom(tree, dimensions, values, problems);
  holdMusts(tree, names.scope, problems);
  const given: PieceValues = { reckon: reckoning(names.scope, tree.units), wood: woodIn(names), tools };
  const design = problems.during(() => designOf(tree, given, problems));
  problems.end();
  return { names, given, design: { ...design!, derived: [...design!.derived, ...workedOutFigures(names)] } };
}

/** Every parameter as its line begins it; what is worked out is left out. */
const defaultsOf = (dimensions: readonly Dimension[]): Values =>
  Object.fromEntries(dimensions.map(({ parameter, schema }) => [parameter, schema?.parse(undefined)]));

/** Sizes that were left out, worked out in the order of the file; one that cannot be is left out still. */
function completed<V extends Values>(tree: PieceTree, dimensions: readonly Dimension[], values: V): V {
  const { scope } = knownFrom(tree, dimensions, values, new Problems('', ''));
  const found = dimensions.flatMap(({ parameter, from }) => {
    if (!from || values[parameter] !== undefined) return [];
    try {
      return [[parameter, startOf(from, scope, tree.units)]];
    } catch (error) {
      if (error instanceof Problem) return [];
      throw error;
    }
  });
  return { ...values, ...Object.fromEntries(found) };
}

/** The wood a phrase names: a row of the tables, or what was chosen for a dimension. */
const woodIn =
  ({ words }: Known): PieceValues['wood'] =>
  (phrase) => {
    const name = words.get(phrase.value) ?? phrase.value;
    if (materialNames.includes(name)) return name;
    throw problemWith(
      phrase,
      `there is no wood '${name}' in the tables`,
      didYouMeanWord(name, materialNames),
    );
  };

/** @throws Problem for a dimension that is called like an option of the program */
function untaken(dimension: Dimension, taken: readonly string[]): Dimension {
  const option = optionName(dimension.parameter);
  if (dimension.schema && taken.includes(option))
    throw problemWith(
      dimension.name,
      `--${option} is an option of the program already`,
      'choose another name for the dimension',
    );
  return dimension;
}

/** What the file works out, for the person to see. */
const workedOutFigures = ({ workedOut }: Known): Design['derived'] =>
  workedOut.flatMap(({ name, formula, figure }) => {
    const { value, lengths, angles, yes } = figure;
    const isFigure = isPlain(figure) || (lengths === 1 && angles === 0) || (lengths === 0 && angles === 1);
    if (yes || !isFigure) return [];
    return [{ name, value, unit: lengths === 1 ? 'mm' : angles === 1 ? 'deg' : '', help: formula }];
  });
