import type { Design } from '../../assembly/index.js';
import type { Say } from '../../length/index.js';
import {
  type Block,
  bearingPaper,
  glueUpPaper,
  orderPaper,
  paragraph,
  type ShopPapers,
  setupPaper,
  strong,
} from '../../shop/index.js';
import type { OutputFile } from '../folder/index.js';
import { cutListCsv } from './cutlist-csv.js';
import { hardwareCsv } from './hardware-csv.js';
import { markdown } from './markdown.js';
import { marksSvg } from './marks-svg.js';
import { sheetsDxf } from './sheets-dxf.js';
import { sheetsSvg } from './sheets-svg.js';
import { tenonsCsv } from './tenons-csv.js';

/** The words every cutting paper of a design with error findings carries. */
const FAILED_LINE = paragraph(strong('FAILED CHECKS: do not cut from this paper.'));

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
  const told = (blocks: readonly Block[]): string =>
    markdown(failedChecks ? [FAILED_LINE, ...blocks] : blocks);
  const title = failedChecks ? `FAILED CHECKS ${design.title}` : design.title;
  const shown = { say, revision: failedChecks ? `${revision} FAILED CHECKS` : revision };
  return [
    file('setup.md', told(setupPaper({ ...papers, design }))),
    file('order.md', told(orderPaper({ ...papers, design }))),
    file('glue-up.md', told(glueUpPaper({ ...papers, design }))),
    file('bears.md', told(bearingPaper({ ...papers, design }))),
    file('tenons.csv', tenonsCsv(papers.tenons, papers.strips, say, shown.revision)),
    file('cutlist.csv', cutListCsv(papers.cutList, papers.bills, say, shown.revision)),
    file('hardware.csv', hardwareCsv(papers.hardware, shown.revision)),
    file('marks.svg', marksSvg(papers.sticks, { ...shown, title })),
    file('sheets.svg', sheetsSvg(papers.layouts, shown)),
    { path: 'shop/sheets.dxf', bytes: sheetsDxf(papers.layouts, say.units, shown) },
  ];
}
