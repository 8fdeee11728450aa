import { trimmed } from '../../length/index.js';
import { boardMarks } from '../../shop/index.js';
import type { Solids } from '../../solid/index.js';
import { type DrawingUnits, fitRows, sizeRows } from '../sheet/index.js';

/** An entry of the parts table. */
export interface ListedPart {
  /** Boards carry the marks that are written on them; tenons and hardware are numbered. */
  readonly marks: readonly string[];
  /** Ids of the bodies it stands for, one for each mark; all of them share the one mark of tenons and hardware. */
  readonly ids: readonly string[];
  readonly name: string;
  /** Thickness × width × length, in this order; empty for hardware, whose name says its size. */
  readonly size: string;
  readonly material: string;
}

/** The parts of a design: boards, tenons, hardware; equal ones in one row. */
export function partsList(solids: Solids, units: DrawingUnits): readonly ListedPart[] {
  const say = (sizes: readonly number[]) => sizes.map((mm) => sizeRows(mm, units).join(' ')).join(' × ');
  const marks = boardMarks(solids.design.boards.map(({ board }) => board.id));
  const boards = alike(
    [...solids.boards.values()].map(({ id, board }) => ({
      marks: [marks.get(id)!],
      ids: [id],
      name: board.name,
      size: say([board.blank.thickness, board.blank.width, board.blank.length]),
      material: board.material,
    })),
    ({ size, material }) => `${size}|${material}`,
  );
  const tenons = [...solids.tenons.values()].map(({ id, tenon }) => ({
    marks: [],
    ids: [id],
    name: tenon.mitreA || tenon.mitreB ? 'loose tenon, end mitred' : 'loose tenon',
    size: `${fitRows(tenon.thickness, units).join(' ')} × ${say([tenon.width, tenon.length])}`,
    material: '',
  }));
  const hardware = [...solids.hardware.values()].map(({ id, hardware: { name } }) => ({
    marks: [],
    ids: [id],
    name,
    size: '',
    material: '',
  }));
  const bought = alike([...tenons, ...hardware], ({ name, size }) => `${name}|${size}`);
  return [...boards, ...bought.map((part, i) => ({ ...part, marks: [trimmed(i + 1, 0)] }))];
}

function alike(parts: readonly ListedPart[], keyOf: (part: ListedPart) => string): readonly ListedPart[] {
  const kinds = new Map<string, ListedPart[]>();
  for (const part of parts) kinds.set(keyOf(part), [...(kinds.get(keyOf(part)) ?? []), part]);
  return [...kinds.values()].map((same) => ({
    ...same[0]!,
    marks: same.flatMap(({ marks }) => marks),
    ids: same.flatMap(({ ids }) => ids),
    name: [...new Set(same.map(({ name }) => name))].join(', '),
  }));
}

/** The list as rows of words. */
export const partsTable = (parts: readonly ListedPart[]): readonly (readonly string[])[] => [
  ['mark', 'part', 'pieces', 'thick × wide × long', 'material'],
  ...parts.map(({ marks, name, ids, size, material }) => [
    marks.join(', '),
    name,
    trimmed(ids.length, 0),
    size,
    material,
  ]),
];
