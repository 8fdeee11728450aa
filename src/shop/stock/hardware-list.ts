import type { Design, HardwareKind } from '../../assembly/index.js';

/** A line of the shopping list: pieces with one name. */
export interface HardwareRow {
  readonly name: string;
  readonly kind: HardwareKind;
  readonly count: number;
  readonly ids: readonly string[];
}

/** What has to be bought, equal pieces together, in the order the design names them; what the person owns is left out. */
export function hardwareList(design: Design): readonly HardwareRow[] {
  const bought = design.hardware.filter((piece) => piece.bought);
  const names = [...new Set(bought.map(({ name }) => name))];
  return names.map((name) => {
    const pieces = bought.filter((piece) => piece.name === name);
    return { name, kind: pieces[0]!.kind, count: pieces.length, ids: pieces.map(({ id }) => id) };
  });
}
