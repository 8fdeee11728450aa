import { CHECKS } from '../../checks/index.js';
import {
  type DrawingUnits,
  type PlanContent,
  type PrintScale,
  parsePrintScale,
  planContent,
  planTemplates,
} from '../../drawing/index.js';
import type { OutputFile } from '../folder/index.js';
import type { DesignRequest, Made, PlanFonts } from '../made/index.js';
import { cutLine } from '../papers/index.js';
import { sheetSvg } from '../svg/index.js';
import { pdf } from './pdf.js';
import { planPdf } from './plan-pdf.js';

/** How a plan is set; what is left out: both papers, the person's units, first angle, no correction. */
export interface PlanOptions {
  readonly units?: DrawingUnits;
  readonly projection?: 'first-angle' | 'third-angle';
  readonly printScale?: PrintScale;
  /** Where the figures in full and the tiled templates go: behind the plan, into files of their own, or nowhere. */
  readonly appendix?: 'end' | 'separate' | 'none';
}

/** The files of a plan on each paper. */
const PARTS = {
  end: ['whole'],
  separate: ['appendix apart', 'appendix'],
  none: ['appendix left out'],
} as const;

/** Written over every page of a design that failed a check. */
const STAMP = 'FAILED CHECKS: do not cut from this sheet';

/**
 * The plan on A4 and on Letter, and the templates whole: one PDF at full size for a plotter and an SVG each.
 *
 * With failed checks every page says so.
 */
export async function planFiles(
  made: Made,
  fonts: PlanFonts,
  options: PlanOptions = planOptions(made.request),
  content: PlanContent = planOf(made, options),
): Promise<readonly OutputFile[]> {
  const plans: OutputFile[] = [];
  for (const paper of ['A4', 'Letter'] as const)
    for (const part of PARTS[options.appendix ?? 'end'])
      plans.push(await planPdf(content, paper, fonts, part));
  const sheets = planTemplates(content);
  if (sheets.length === 0) return plans;
  const { printScale } = options;
  const whole = await pdf(sheets, {
    title: `${made.solids.design.title}, templates at full size`,
    fonts,
    bookmarks: sheets.map(({ title }, sheet) => ({ title, sheet })),
    ...(printScale ? { printScale } : {}),
  });
  return [
    ...plans,
    { path: 'plan/templates.pdf', bytes: whole },
    ...sheets.map((sheet) => ({
      path: `plan/${sheet.id}.mm.svg`,
      bytes: new TextEncoder().encode(sheetSvg(sheet)),
    })),
  ];
}

/**
 * What the person asked of the plan.
 *
 * @throws InputError for factors of the print scale that cannot be used
 */
export const planOptions = ({
  projection,
  drawingUnits,
  printScale,
  appendix,
}: DesignRequest): PlanOptions => ({
  ...(drawingUnits && { units: drawingUnits }),
  ...(appendix && { appendix }),
  ...(projection && { projection }),
  ...(printScale !== undefined && { printScale: parsePrintScale(printScale) }),
});

/** Everything the plan tells, from what was worked out for the papers of the bench. */
export function planOf(made: Made, options: PlanOptions = planOptions(made.request)): PlanContent {
  const { solids, papers, request, say } = made;
  return planContent({
    solids,
    summary: request.model.summary,
    papers,
    findings: made.findings,
    ...(request.ranges && { ranges: request.ranges }),
    checks: CHECKS.map(({ name }) => name),
    layoutRows: papers.layouts.map(({ plan }) =>
      plan.pieces.map(({ cuts }) => cuts.map((cut) => cutLine(cut, say))),
    ),
    units: options.units ?? request.shop.units,
    projection: options.projection ?? 'first-angle',
    revision: made.revision,
    ...(request.bush === undefined ? {} : { bush: request.bush }),
    ...(options.printScale ? { printScale: options.printScale } : {}),
    ...(made.failed ? { stamp: STAMP } : {}),
  });
}
