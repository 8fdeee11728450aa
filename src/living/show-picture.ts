import { type Looker, onPage, type PreviewData } from '../viewer/index.js';
import { tellTitle } from './told-parts.js';

/** Pieces alone are new: what was told of the last state stays until it is told anew. */
export function showPicture(
  looker: Looker,
  data: PreviewData,
  still: string | undefined,
  same: boolean,
): void {
  const { data: last } = looker;
  if (still !== undefined) onPage('still').innerHTML = still;
  if (!same) {
    looker.show(data);
    looker.choose([]);
    looker.change({ step: undefined, along: 1, hidden: new Set() });
    looker.stage?.view('corner');
    tellTitle(data.title);
    return;
  }
  const apart = new Map(last.pieces.map((piece) => [piece.id, piece.apart]));
  const { first, steps, joints, findings } = last;
  looker.show({
    ...data,
    first,
    steps,
    joints,
    findings,
    pieces: data.pieces.map((piece) => ({ ...piece, apart: apart.get(piece.id) ?? piece.apart })),
  });
}
