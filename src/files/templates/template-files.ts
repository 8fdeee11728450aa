import { type Board, type Follower, templateOutline } from '../../board/index.js';
import { templateOf } from '../../drawing/index.js';
import type { OutputFile } from '../folder/index.js';
import type { Made } from '../made/index.js';
import { templateDxf, templateFileName } from './template-dxf.js';

/** Full-size templates: one a board, and one for each piece made to hold the work. */
export function templateFiles({ request, solids, aids, failed, revision }: Made): readonly OutputFile[] {
  const { units, curves, bush, shop } = request;
  const flush: Follower = { cutter: solids.design.cutter };
  const follower: Follower = { ...flush, ...(bush === undefined ? {} : { bush }) };
  const file = (board: Board, folder: string, follower: Follower): OutputFile => {
    const template = templateOf(board, { units: shop.units, revision, ...follower });
    return {
      path: `${folder}/${templateFileName(template, units)}`,
      bytes: templateDxf(template, { units, curves, failed }),
    };
  };
  return [
    // a board the bush leaves nothing of is a finding, and costs the others nothing
    ...solids.design.boards
      .filter(({ board }) => templateOutline(board, follower).length > 0)
      .map(({ board }) => file(board, 'templates', follower)),
    // aids are sawn and planed to their lines
    ...aids.map(({ board }) => file(board, 'templates/aids', flush)),
  ];
}
