import { z } from 'zod';
import { loadModel, modelNames } from '../node/index.js';
import { type Command, DONE } from './command.js';
import { columnsOf, modelsOf } from './surroundings.js';
import { table } from './table.js';

/** `tenonwright list`: the models there are. */
export const list: Command = {
  name: 'list',
  summary: 'list the models',
  about: 'nothing',
  parameters: z.object({}),
  async act(_, { around }) {
    const names = await modelNames(modelsOf(around));
    const models = await Promise.all(names.map((name) => loadModel(name, modelsOf(around))));
    around.out.write(
      table(
        models.map(({ name, title, summary }) => [name, title, summary]),
        columnsOf(around),
      ),
    );
    return DONE;
  },
};
