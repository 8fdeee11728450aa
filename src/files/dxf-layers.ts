import { type Pair, withHeader } from './dxf-pairs.js';

/**
 * The groups of a DXF text with more layers declared in its LAYER table, drawn by colour 7 (black on white, white on
 * black).
 *
 * @param nextHandle hexadecimal; the first handle nothing in the file uses, nor any after it
 */
export function withLayers(pairs: readonly Pair[], names: readonly string[], nextHandle: string): Pair[] {
  const table = pairs.findIndex(
    (pair, i) => pair[0] === '2' && pair[1] === 'LAYER' && pairs[i - 1]?.[1] === 'TABLE',
  );
  const end = pairs.findIndex((pair, i) => i > table && pair[0] === '0' && pair[1] === 'ENDTAB');
  if (table < 0 || end < 0) throw new RangeError('the DXF text has no LAYER table');
  const owner = pairs[table + 1]![1];
  const first = Number.parseInt(nextHandle, 16);
  const records = names.flatMap((name, i): Pair[] => [
    ['0', 'LAYER'],
    ['5', (first + i).toString(16).toUpperCase()],
    ['330', owner],
    ['100', 'AcDbSymbolTableRecord'],
    ['100', 'AcDbLayerTableRecord'],
    ['2', name],
    ['70', '0'],
    ['62', '7'],
    ['6', 'Continuous'],
  ]);
  const count = pairs.slice(table, end).filter((pair) => pair[0] === '0' && pair[1] === 'LAYER').length;
  const counted = pairs.map((pair, i): Pair => {
    const isCount = i > table && i < end && pair[0] === '70' && pairs[i - 1]?.[1] === 'AcDbSymbolTable';
    return isCount ? ['70', String(count + names.length)] : pair;
  });
  const seed = (first + names.length).toString(16).toUpperCase();
  return withHeader([...counted.slice(0, end), ...records, ...counted.slice(end)], '$HANDSEED', '5', seed);
}
