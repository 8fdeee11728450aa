import * as z from 'zod';
import { newPieceFile } from '../../node/index.js';
import { PROGRAM } from '../argv/index.js';
import { type Command, DONE } from '../around/index.js';

/** `tenonwright new garden-shelf`: a commented file to start a piece from. */
export const newCommand: Command = {
  name: 'new',
  summary: 'write a commented file to start a piece of your own from',
  about: 'a name',
  parameters: z.object({}),
  async act(_, { around, subject }) {
    const file = await newPieceFile(around.cwd, subject);
    around.out.write(
      `${file} is written, a shelf to change into a piece of your own.\n${PROGRAM} explain ${file} says back what it tells; ${PROGRAM} make ${file} makes it.\n`,
    );
    return DONE;
  },
};
