import type { HardwareRow } from '../../shop/index.js';
import { csv } from './csv.js';
import { tableOf } from './csv-columns.js';

/** What has to be bought, as CSV. */
export const hardwareCsv = (rows: readonly HardwareRow[], revision: string): string =>
  csv(
    tableOf(
      [
        { name: 'count', of: ({ count }) => String(count) },
        { name: 'name', of: ({ name }) => name },
        { name: 'kind', of: ({ kind }) => kind },
        { name: 'ids', of: ({ ids }) => ids.join(' ') },
      ],
      rows,
      revision,
    ),
  );
