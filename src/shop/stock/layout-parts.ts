import type { CutRow } from './cut-list.js';

/** A piece of the cut list as it goes onto the stock. mm */
export interface LayoutPart {
  /** Unique in the layout, and written on the piece: `LS`, `X1.2`. */
  readonly mark: string;
  readonly name: string;
  readonly material: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** Taken from what lies about, not bought. */
  readonly scrap: boolean;
}

/** Every single piece of a cut list, in its rough size where it has one. */
export const layoutParts = (rows: readonly CutRow[]): readonly LayoutPart[] =>
  rows.flatMap((row) => {
    const { length, width, thickness } = row.rough?.size ?? row.finished;
    return Array.from({ length: row.count }, (_, i): LayoutPart => {
      const own = row.kind === 'board' ? row.marks[i]! : row.marks.join('+');
      return {
        mark: row.kind === 'board' || row.count === 1 ? own : `${own}.${i + 1}`,
        name: row.names[i] ?? row.name,
        material: row.material,
        length,
        width,
        thickness,
        scrap: row.scrap,
      };
    });
  });
