import {
  appendixName,
  type Paper,
  type PlanContent,
  type PlanPart,
  planSheets,
} from '../../drawing/index.js';
import type { OutputFile } from '../folder/index.js';
import type { PlanFonts } from '../made/index.js';
import { pdf } from './pdf.js';
import { lettersOf } from './plan-letters.js';

/** The plan on a paper as a file, the paper in its name: `plan.a4.pdf`. */
export async function planPdf(
  content: PlanContent,
  paper: Paper,
  fonts: PlanFonts,
  part: PlanPart = 'whole',
): Promise<OutputFile> {
  const { sheets, entries, title } = planSheets(content, paper, part);
  const { printScale } = content.parts;
  return {
    path: part === 'appendix' ? appendixName(paper) : `plan.${paper.toLowerCase()}.pdf`,
    bytes: await pdf(sheets, {
      title,
      fonts,
      bookmarks: entries,
      letters: lettersOf(content),
      ...(printScale ? { printScale } : {}),
    }),
  };
}
