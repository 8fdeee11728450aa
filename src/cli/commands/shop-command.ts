import * as z from 'zod';
import { InputError } from '../../errors.js';
import { flag } from '../../model/index.js';
import { shopExample } from '../../shop/index.js';
import { type Command, DONE } from '../around/index.js';
import { fraction, givenShop, shop as shopOption, units } from '../given/index.js';

const options = {
  example: flag({ default: false, help: 'print a documented example of a shop file' }),
  shop: shopOption,
  units,
  fraction,
};

/** `tenonwright shop --example`: a shop file to start from; with `--shop`, that file as it was understood. */
export const shopCommand: Command<typeof options> = {
  name: 'shop',
  summary: 'print an example of a shop file, or check one',
  about: 'nothing',
  parameters: z.object(options),
  async act({ example, shop, units, fraction }, { around }) {
    if (example === (shop !== undefined))
      throw new InputError(
        'shop-option',
        example
          ? 'shop takes --example or --shop, not both: leave one out'
          : 'shop needs --example for a file to start from, or --shop with the path of a file to check',
      );
    const given = await givenShop(shop, units, around, fraction);
    around.out.write(shopExample(units, given.shop));
    return DONE;
  },
};
