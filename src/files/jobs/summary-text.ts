import { volume } from '../../solid/index.js';
import type { Made } from '../made/index.js';
import { json, summaryOf, type WrittenFile } from '../summary/index.js';

/** The text of `summary.json`: what is told is what is written, to the last digit. */
export function summaryText(made: Made, files: readonly WrittenFile[], withPapers: boolean): string {
  const { request, solids } = made;
  const written = new Set(files.map(({ path }) => path));
  const own = (path: string): string | undefined => (written.has(path) ? path : undefined);
  const filesOfBoard = (id: string, below: string) => {
    const solid = own(`stl/${below}${id}.mm.stl`);
    const template = own(`templates/${below}${id}.${request.units}.dxf`);
    return { ...(solid && { solid }), ...(template && { template }) };
  };
  return json(
    summaryOf({
      design: solids.design,
      version: request.version,
      parameters: made.parameters,
      volumes: new Map([...solids.boards.values()].map(({ id, own: body }) => [id, volume(body)])),
      tenons: made.bench.tenons,
      findings: made.findings,
      ranges: request.ranges,
      files,
      boardFiles: new Map([...solids.boards.keys()].map((id) => [id, filesOfBoard(id, '')])),
      revision: made.revision,
      papers: withPapers ? made.papers : undefined,
      aidFiles: new Map(made.aids.map(({ board }) => [board.id, filesOfBoard(board.id, 'aids/')])),
    }),
  );
}
