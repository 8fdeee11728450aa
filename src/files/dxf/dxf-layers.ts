import { type Pair, withHeader } from './dxf-pairs.js';

/** A layer and the index of its colour; 7 is black on white and white on black. */
export interface DeclaredLayer {
  readonly name: string;
  readonly colour: number;
}

/**
 * The groups of a DXF text with more layers declared in its LAYER table.
 *
 * @param nextHandle hexadecimal; the first handle nothing in the file uses, nor any after it
 */
export function withLayers(
  pairs: readonly Pair[],
  layers: readonly DeclaredLayer[],
  nextHandle: string,
): Pair[] {
  const table = pairs.findIndex(
    (pair, i) => pair[0] === '2' && pair[1] === 'LAYER' && pairs[i - 1]?.[1] === 'TABLE',
  );
  const end = pairs.findIndex((pair, i) => i > table && pair[0] === '0' && pair[1] === 'ENDTAB');
  if (table < 0 || end < 0) throw new RangeError('the DXF text has no LAYER table');
  const owner = pairs[table + 1]![1];
  const first = Number.parseInt(nextHandle, 16);
  const records = layers.flatMap(({ name, colour }, i): Pair[] => [
    ['0', 'LAYER'],
    ['5', (first + i).toString(16).toUpperCase()],
    ['330', owner],
    ['100', 'AcDbSymbolTableRecord'],
    ['100', 'AcDbLayerTableRecord'],
    ['2', name],
    ['70', '0'],
    ['62', String(colour)],
    ['6', 'Continuous'],
  ]);
  const count = pairs.slice(table, end).filter((pair) => pair[0] === '0' && pair[1] === 'LAYER').length;
  const counted = pairs.map((pair, i): Pair => {
    const isCount = i > table && i < end && pair[0] === '70' && pairs[i - 1]?.[1] === 'AcDbSymbolTable';
    return isCount ? ['70', String(count + layers.length)] : pair;
  });
  const seed = (first + layers.length).toString(16).toUpperCase();
  return withHeader([...counted.slice(0, end), ...records, ...counted.slice(end)], '$HANDSEED', '5', seed);
}
