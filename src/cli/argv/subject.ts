import { InputError } from '../../errors.js';
import { didYouMean, type Model } from '../../model/index.js';
import { isPiecePath, loadModel, loadPiece, modelNames, pieceFiles, pieceNames } from '../../node/index.js';
import { modelsOf, piecesOf, type Surroundings } from '../around/index.js';

/** Names a command may be about: models, and pieces that come with the program. */
export async function subjectNames(around: Surroundings): Promise<readonly string[]> {
  const [models, pieces] = await Promise.all([modelNames(modelsOf(around)), pieceNames(piecesOf(around))]);
  return [...new Set([...models, ...pieces])];
}

/**
 * What a word of the line names: a model, a piece that comes with the program, or a piece in a file of one's own. Nothing else is
 * loaded, and of a piece's file nothing is run.
 *
 * @param taken names of the program's options, which a piece's dimensions cannot have
 * @throws InputError when there is nothing of that name, or a piece cannot be read
 */
export async function loadSubject(
  word: string,
  around: Surroundings,
  taken: readonly string[],
): Promise<Model> {
  if (isPiecePath(word)) return loadPiece(around.cwd, word, taken);
  const models = await modelNames(modelsOf(around));
  if (models.includes(word)) return loadModel(word, modelsOf(around));
  const pieces = await pieceNames(piecesOf(around));
  if (pieces.includes(word)) return loadPiece(piecesOf(around), `${word}.yaml`, taken);
  const own = (await pieceFiles(around.cwd)).find((file) => file.startsWith(`${word}.`));
  throw new InputError(
    'model-unknown',
    `there is no model '${word}'${own === undefined ? didYouMean(word, [...models, ...pieces]) : `: did you mean the file ${own}?`}`,
  );
}
