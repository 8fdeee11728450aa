import type { Design } from '../../assembly/index.js';
import type { Say } from '../../length/index.js';
import type { ShopPapers } from '../../shop/index.js';
import type { OutputFile } from '../folder/index.js';
import { cutListCsv } from './cutlist-csv.js';
import { glueUpMd } from './glue-up-md.js';
import { hardwareCsv } from './hardware-csv.js';
import { marksSvg } from './marks-svg.js';
import { orderMd } from './order-md.js';
import { setupMd } from './setup-md.js';
import { sheetsDxf } from './sheets-dxf.js';
import { sheetsSvg } from './sheets-svg.js';
import { tenonsCsv } from './tenons-csv.js';

/** The words every cutting paper of a design with error findings carries. */
const FAILED_LINE = '**FAILED CHECKS: do not cut from this paper.**\n\n';

/** The papers of the bench, below `shop/`. */
export function shopFiles(
  papers: ShopPapers,
  design: Design,
  say: Say,
  failedChecks: boolean,
): readonly OutputFile[] {
  const { revision } = papers;
  const file = (name: string, text: string): OutputFile => ({
    path: `shop/${name}`,
    bytes: new TextEncoder().encode(text),
  });
  const warned = (text: string): string => (failedChecks ? FAILED_LINE + text : text);
  const title = failedChecks ? `FAILED CHECKS ${design.title}` : design.title;
  const shown = { say, revision: failedChecks ? `${revision} FAILED CHECKS` : revision };
  return [
    file('setup.md', warned(setupMd({ ...papers, design }))),
    file('order.md', warned(orderMd({ ...papers, design }))),
    file('glue-up.md', warned(glueUpMd({ ...papers, design }))),
    file('tenons.csv', tenonsCsv(papers.tenons, papers.strips, say, shown.revision)),
    file('cutlist.csv', cutListCsv(papers.cutList, papers.bills, say, shown.revision)),
    file('hardware.csv', hardwareCsv(papers.hardware, shown.revision)),
    file('marks.svg', marksSvg(papers.sticks, { ...shown, title })),
    file('sheets.svg', sheetsSvg(papers.layouts, shown)),
    { path: 'shop/sheets.dxf', bytes: sheetsDxf(papers.layouts, say.units, shown) },
  ];
}
