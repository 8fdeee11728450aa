import { relative, resolve } from 'node:path';
import * as z from 'zod';
import { InputError } from '../../errors.js';
import { speaker } from '../../length/index.js';
import { readParameters, text } from '../../model/index.js';
import { writePicture } from '../../node/index.js';
import type { BoardSaidBack, Piece, SaidBack } from '../../notation/index.js';
import { toolsOf } from '../../shop/index.js';
import { type Command, columnsOf, DONE, table, wrap } from '../around/index.js';
import { fraction, from, givenShop, givenValues, requireInches, shop, units } from '../given/index.js';

const options = {
  from,
  shop,
  units,
  fraction,
  out: text({ default: 'out', help: 'folder in which the picture is written' }),
};

/** `tenonwright explain garden-shelf.yaml`: says back, board by board, what a piece's file tells, and draws it. */
export const explain: Command<typeof options> = {
  name: 'explain',
  summary: "say back what a piece's file tells, in words and a picture",
  about: 'model and parameters',
  parameters: z.object(options),
  async act({ from, shop, units, fraction, out }, { around, model, raw, subject }) {
    if (!isPiece(model))
      throw new InputError(
        'not-a-piece',
        `${subject} is told in code, and only a piece told in a file can be said back: name a file that ends in .yaml`,
      );
    requireInches(fraction, units);
    const { shop: atHand } = await givenShop(shop, units, around, fraction);
    const given = await givenValues(from, raw, around.cwd);
    const values = readParameters(model, given, units, atHand.measures);
    const tools = toolsOf(atHand);
    const told = model.saidBack(values, tools, speaker(atHand.units));
    const width = columnsOf(around);
    const picture = await writePicture(told.design, atHand.units, resolve(around.cwd, out));
    around.out.write(
      [
        `${model.title}\n`,
        rowsOf(told.figures, width),
        ...told.boards.map((board) => boardWords(board, width)),
        told.joints.length > 0 ? `\nJoints\n${rowsOf(told.joints, width)}` : '\nNo joints\n',
        `\nDrawn in ${relative(around.cwd, picture)}\n`,
      ].join(''),
    );
    return DONE;
  },
};

const isPiece = (model: unknown): model is Piece => typeof (model as Partial<Piece>).saidBack === 'function';

function boardWords({ name, line, copies, summary, lines }: BoardSaidBack, width: number): string {
  const named = copies.length === 0 ? 'left out with these values' : copies.join(', ');
  const head = wrap(`${name}, line ${line}${copies.join() === name ? '' : `: ${named}`}`, width).join('\n');
  const about = summary === '' ? '' : `${indented(wrap(summary, width - 2).join('\n'))}\n`;
  return `\n${head}\n${about}${rowsOf(lines, width)}`;
}

const rowsOf = (rows: readonly SaidBack[], width: number): string =>
  `${indented(
    table(
      rows.map(({ told, comesTo }) => [told, comesTo]),
      width - 2,
    ).trimEnd(),
  )}\n`;

const indented = (words: string): string => words.replace(/^(?=.)/gm, '  ');
