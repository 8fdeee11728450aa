import * as z from 'zod';
import { InputError } from '../../errors.js';
import {
  loadModel,
  loadPiece,
  looksLikePiece,
  modelNames,
  pieceFiles,
  pieceNames,
} from '../../node/index.js';
import {
  type Command,
  columnsOf,
  DONE,
  modelsOf,
  piecesOf,
  type Surroundings,
  table,
} from '../around/index.js';

type Row = readonly [name: string, title: string, summary: string];

/** `tenonwright list`: the models and pieces there are, and pieces in the folder of the person. */
export const list: Command = {
  name: 'list',
  summary: 'list the models, and pieces in this folder',
  about: 'nothing',
  parameters: z.object({}),
  async act(_, { around }) {
    const models = await modelNames(modelsOf(around));
    const pieces = (await pieceNames(piecesOf(around))).filter((name) => !models.includes(name));
    const known = await Promise.all([
      ...models.map(async (name) => rowOf(await loadModel(name, modelsOf(around)))),
      ...pieces.map(async (name) => rowOf(await loadPiece(piecesOf(around), `${name}.yaml`, []))),
    ]);
    const own = await ownPieces(around);
    around.out.write(table(known.toSorted(byName), columnsOf(around)));
    if (own.length > 0) around.out.write(`\nPieces in this folder\n${table(own, columnsOf(around))}`);
    return DONE;
  },
};

const rowOf = ({ name, title, summary }: { name: string; title: string; summary: string }): Row => [
  name,
  title,
  summary,
];

const byName = ([a]: Row, [b]: Row): number => (a < b ? -1 : 1);

/** Files of the folder that are pieces, by their paths; one with mistakes is named all the same. */
async function ownPieces({ cwd }: Surroundings): Promise<readonly Row[]> {
  const rows = (await pieceFiles(cwd)).map(async (file): Promise<Row | undefined> => {
    try {
      const { title, summary } = await loadPiece(cwd, file, []);
      return [file, title, summary];
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      // another file of values, or a shop's, is no piece with mistakes
      return (await looksLikePiece(cwd, file))
        ? [file, '', `has mistakes: tenonwright check ${file} tells them`]
        : undefined;
    }
  });
  return (await Promise.all(rows)).filter((row) => row !== undefined);
}
