import { isometricView, seenParts } from '../../drawing/index.js';
import { rangePaper } from '../../range/index.js';
import { bearingPaper, glueUpPaper, orderPaper, setupPaper } from '../../shop/index.js';
import type { PreviewData } from '../../viewer/index.js';
import type { OutputFile } from '../folder/index.js';
import type { Made } from '../made/index.js';
import { viewSvg } from '../svg/index.js';
import { previewData } from './preview-data.js';
import { type PagePaper, previewPage } from './preview-page.js';

/**
 * The page to look at a design with.
 *
 * @param viewer the packed script of `src/viewer`
 */
export function pageFile(made: Made, viewer: string): OutputFile {
  const { data, papers } = toldOnPage(made);
  const page = previewPage(data, viewer, stillOf(made), papers);
  return { path: 'preview.html', bytes: new TextEncoder().encode(page) };
}

/** What a page shows and tells of a design. */
export interface ToldOnPage {
  readonly data: PreviewData;
  readonly papers: readonly PagePaper[];
}

export function toldOnPage(made: Made): ToldOnPage {
  const { solids, bench, findings, revision } = made;
  const data = previewData({
    solids,
    tenons: bench.tenons,
    findings,
    glueUp: bench.glueUp.glueUp,
    revision,
    strength: made.papers.strength,
    say: made.say,
    // the edges drawn in the still picture are those of the solids on the page
    edges: new Map(seenParts(solids).map(({ id, solid }) => [id, solid])),
  });
  return { data, papers: papersOf(made) };
}

/** What is shown of solids before anything was measured on them: pieces alone, drawn apart as the exploded view has it. */
export const shownAtOnce = ({
  solids,
  revision,
  say,
}: Pick<Made, 'solids' | 'revision' | 'say'>): PreviewData =>
  previewData({
    solids,
    tenons: [],
    findings: [],
    glueUp: { seatings: [], steps: [], stages: [], conflicts: [], fixings: [], loose: [] },
    revision,
    strength: undefined,
    say,
  });

/** The picture for who has no script, or no WebGL. */
export const stillOf = ({ solids }: Pick<Made, 'solids'>): string =>
  viewSvg(isometricView(solids), `${solids.design.title}, seen from a corner`);

/** How far its dimensions may be changed, where it was found out. */
function rangesOf({ request, say }: Made): readonly PagePaper[] {
  if (!request.ranges) return [];
  const { alone, map, together } = rangePaper(request.ranges, say);
  return [{ title: 'Dimensions you may change, and how far', blocks: [...alone, ...map, ...together] }];
}

/** What a design bears, and the papers of one that passed its checks: nothing is cut from one that failed. */
function papersOf(made: Made): readonly PagePaper[] {
  const paper = { ...made.papers, design: made.solids.design };
  // what it bears is to be known of one that failed above all
  const bears = { title: 'What it bears', blocks: bearingPaper(paper) };
  if (made.failed) return [bears];
  return [
    bears,
    { title: 'Set-up cards', blocks: setupPaper(paper) },
    { title: 'Order of work', blocks: orderPaper(paper) },
    { title: 'Glue-up', blocks: glueUpPaper(paper) },
    ...rangesOf(made),
  ];
}
