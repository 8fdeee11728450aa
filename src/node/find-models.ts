import { readdir } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { InputError } from '../errors.js';
import { didYouMean, type Model } from '../model/index.js';

/** Models are files of the same kind as this one: `.js` when built, `.ts` when run from source. */
const EXTENSION = extname(fileURLToPath(import.meta.url));

/** Folder of the program's own models. */
export const OWN_MODELS = fileURLToPath(new URL('../../models/', import.meta.url));

/** Names of the models in a folder, sorted: one for each file. */
export async function modelNames(folder: string): Promise<readonly string[]> {
  const files = await readdir(folder);
  return files
    .filter((file) => extname(file) === EXTENSION && !file.endsWith('.d.ts'))
    .map((file) => basename(file, EXTENSION))
    .sort();
}

/**
 * Loads one model and no other.
 *
 * @throws InputError `model-unknown` when no file has that name
 * @throws Error when the file does not define a model of its own name: a fault of the model
 */
export async function loadModel(name: string, folder: string): Promise<Model> {
  const names = await modelNames(folder);
  if (!names.includes(name))
    throw new InputError('model-unknown', `there is no model '${name}'${didYouMean(name, names)}`);
  const path = join(folder, name + EXTENSION);
  const { default: model } = (await import(/* @vite-ignore */ pathToFileURL(path).href)) as {
    default?: Model;
  };
  if (model?.parameters === undefined) throw new Error(`${path} has no model as its default export`);
  if (model.name !== name) throw new Error(`${path} defines the model '${model.name}': name them alike`);
  return model;
}
