import { trimmed } from '../../length/index.js';
import type { Solids } from '../../solid/index.js';
import { type DrawingUnits, dimensionRows, STEP } from '../sheet/index.js';

/** A numbered entry of the parts table. */
export interface ListedPart {
  readonly number: number;
  /** Ids of the bodies it stands for; boards have a number each, like tenons and like hardware share one. */
  readonly ids: readonly string[];
  readonly name: string;
  /** Thickness × width × length, in this order; empty for hardware, whose name says its size. */
  readonly size: string;
  readonly material: string;
}

/** The parts of a design in numbered order: boards, tenons, hardware. */
export function partsList(solids: Solids, units: DrawingUnits): readonly ListedPart[] {
  const say = (sizes: readonly number[]) =>
    sizes
      .map((mm) =>
        dimensionRows({ mm: Math.round(mm / STEP.mm), in: Math.round(mm / STEP.in) }, units).join(' '),
      )
      .join(' × ');
  const boards = [...solids.boards.values()].map(({ id, board }) => ({
    ids: [id],
    name: board.name,
    size: say([board.blank.thickness, board.blank.width, board.blank.length]),
    material: board.material,
  }));
  const tenons = alike(
    [...solids.tenons.values()].map(({ id, tenon }) => ({
      ids: [id],
      name: tenon.mitreA || tenon.mitreB ? 'loose tenon, end mitred' : 'loose tenon',
      size: say([tenon.thickness, tenon.width, tenon.length]),
      material: '',
    })),
  );
  const hardware = alike(
    [...solids.hardware.values()].map(({ id, hardware: { name } }) => ({
      ids: [id],
      name,
      size: '',
      material: '',
    })),
  );
  return [...boards, ...tenons, ...hardware].map((part, i) => ({ number: i + 1, ...part }));
}

type Unnumbered = Omit<ListedPart, 'number'>;

function alike(parts: readonly Unnumbered[]): readonly Unnumbered[] {
  const kinds = new Map<string, Unnumbered>();
  for (const part of parts) {
    const key = `${part.name}|${part.size}`;
    const known = kinds.get(key);
    kinds.set(key, known ? { ...known, ids: [...known.ids, ...part.ids] } : part);
  }
  return [...kinds.values()];
}

/** The list as rows of words. */
export const partsTable = (parts: readonly ListedPart[]): readonly (readonly string[])[] => [
  ['no.', 'part', 'pieces', 'thick × wide × long', 'material'],
  ...parts.map(({ number, name, ids, size, material }) => [
    trimmed(number, 0),
    name,
    trimmed(ids.length, 0),
    size,
    material,
  ]),
];
