import { z } from 'zod';
import { describeParameters } from '../model/index.js';
import { type Command, DONE } from './command.js';
import { units } from './shared-options.js';
import { columnsOf } from './surroundings.js';
import { table, wrap } from './table.js';

const options = { units };

/** `tenonwright describe stool`: its parameters. */
export const describe: Command<typeof options> = {
  name: 'describe',
  summary: "list a model's parameters with defaults and ranges",
  about: 'model',
  parameters: z.object(options),
  async act({ units }, { around, model }) {
    const width = columnsOf(around);
    const rows = describeParameters(model, units);
    around.out.write(`${model.title}\n${wrap(model.summary, width).join('\n')}\n\n`);
    around.out.write(
      table(
        [
          ['option', 'default', 'range', 'help'],
          ...rows.map((row) => [`--${row.option}`, row.default, row.range, row.help]),
        ],
        width,
      ),
    );
    return DONE;
  },
};
