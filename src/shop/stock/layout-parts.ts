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

/** Every single piece of a cut list, in its rough size where it has one; pieces with one mark, strips of two lengths too, are numbered. */
export function layoutParts(rows: readonly CutRow[]): readonly LayoutPart[] {
  const ownOf = ({ marks }: CutRow) => marks.join('+');
  const counts = new Map<string, number>();
  for (const row of rows) counts.set(ownOf(row), (counts.get(ownOf(row)) ?? 0) + row.count);
  const given = new Map<string, number>();
  return rows.flatMap((row) => {
    const { length, width, thickness } = row.rough?.size ?? row.finished;
    return Array.from({ length: row.count }, (_, i): LayoutPart => {
      const own = ownOf(row);
      const nth = (given.get(own) ?? 0) + 1;
      given.set(own, nth);
      return {
        mark: row.kind === 'board' ? row.marks[i]! : counts.get(own) === 1 ? own : `${own}.${nth}`,
        name: row.names[i] ?? row.name,
        material: row.material,
        length,
        width,
        thickness,
        scrap: row.scrap,
      };
    });
  });
}
