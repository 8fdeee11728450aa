import { seenParts, VIEW_FRAMES, viewOf } from '../../drawing/index.js';
import type { OutputFile } from '../folder/index.js';
import type { Made } from '../made/index.js';
import { viewSvg } from '../svg/index.js';
import { previewData } from './preview-data.js';
import { previewPage } from './preview-page.js';

/**
 * The page to look at a design with.
 *
 * @param viewer the packed script of `src/viewer`
 */
export function pageFile({ solids, bench, findings, revision }: Made, viewer: string): OutputFile {
  // the edges drawn in the still picture are those of the solids on the page
  const parts = seenParts(solids);
  const data = previewData({
    solids,
    tenons: bench.tenons,
    findings,
    glueUp: bench.glueUp.glueUp,
    revision,
    edges: new Map(parts.map(({ id, solid }) => [id, solid])),
  });
  const view = viewOf(parts, VIEW_FRAMES.isometric, { hidden: false });
  const still = viewSvg(view, `${solids.design.title}, seen from a corner`);
  const page = previewPage(data, viewer, still);
  return { path: 'preview.html', bytes: new TextEncoder().encode(page) };
}
