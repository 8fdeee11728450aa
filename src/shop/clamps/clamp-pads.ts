import type { Design } from '../../assembly/index.js';
import { settledLength } from '../../frame/index.js';
import type { Aid } from '../holding/index.js';
import type { Clamp } from './clamp.js';
import { padBoard } from './clamp-pad.js';
import { type OffcutWedge, offcutWedges } from './offcut-wedges.js';

/** A pad to be made or kept. */
export interface ClampPad extends Aid {
  readonly kind: 'clamp pad';
  readonly angleDeg: number;
  /** Offcuts with this angle, those large enough first; empty for a flat pad. */
  readonly offcuts: readonly OffcutWedge[];
}

/** Every pad once, counted for the stage that needs most of it. */
export function padsOf(design: Design, clamps: readonly Clamp[]): readonly ClampPad[] {
  const uses = clamps.flatMap((clamp) => clamp.ends.map((end) => ({ clamp, end })));
  const wedges = design.boards.flatMap(({ board }) => offcutWedges(board));
  return [...new Set(uses.map(({ end }) => end.pad.aid))].map((aid) => {
    const mine = uses.filter(({ end }) => end.pad.aid === aid);
    const { angleDeg: angle } = mine[0]!.end.pad;
    const perStage = new Map<number, number>();
    for (const { clamp } of mine) perStage.set(clamp.stage, (perStage.get(clamp.stage) ?? 0) + 1);
    const offcuts = angle === 0 ? [] : wedges.filter((wedge) => Math.abs(wedge.angleDeg - angle) <= 0.05);
    const under = [...new Set(mine.map(({ end }) => end.board))].join(', ');
    const material = design.boards.find(({ board }) => board.id === mine[0]!.end.board)!.board.material;
    return {
      board: padBoard(angle, material),
      kind: 'clamp pad' as const,
      purpose:
        angle === 0
          ? `flat pad under the clamps, on ${under}`
          : `${angle.toFixed(2).replace(/\.?0+$/, '')}° wedge under the clamps, on ${under}`,
      count: Math.max(...perStage.values()),
      handed: false,
      angleDeg: angle,
      offcuts: offcuts.toSorted(
        (a, b) => Number(b.serves) - Number(a.serves) || settledLength(b.slope) - settledLength(a.slope),
      ),
    };
  });
}
