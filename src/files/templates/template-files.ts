import type { Board } from '../../board/index.js';
import { templateOf } from '../../drawing/index.js';
import type { OutputFile } from '../folder/index.js';
import type { Made } from '../made/index.js';
import { templateDxf, templateFileName } from './template-dxf.js';

/** Full-size templates: one a board, and one for each piece made to hold the work. */
export function templateFiles({ request, solids, aids, failed, revision }: Made): readonly OutputFile[] {
  const { units, curves, bush } = request;
  const file = (board: Board, folder: string): OutputFile => {
    const follower = { cutter: solids.design.cutter, ...(bush === undefined ? {} : { bush }) };
    const template = templateOf(board, { units, revision, ...follower });
    return {
      path: `${folder}/${templateFileName(template, units)}`,
      bytes: templateDxf(template, { units, curves, failed }),
    };
  };
  return [
    ...solids.design.boards.map(({ board }) => file(board, 'templates')),
    ...aids.map(({ board }) => file(board, 'templates/aids')),
  ];
}
