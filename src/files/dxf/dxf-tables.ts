import { fixed } from '../../length/index.js';
import { type Pair, withHeader } from './dxf-pairs.js';
import type { LineType } from './dxf-scale.js';

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
export const withLayers = (
  pairs: readonly Pair[],
  layers: readonly DeclaredLayer[],
  nextHandle: string,
): Pair[] =>
  withRecords(
    pairs,
    'LAYER',
    layers.map(({ name, colour }): Pair[] => [
      ['100', 'AcDbLayerTableRecord'],
      ['2', name],
      ['70', '0'],
      ['62', String(colour)],
      ['6', 'Continuous'],
    ]),
    nextHandle,
  );

/** The groups of a DXF text with more line types declared in its LTYPE table; see {@link withLayers}. */
export const withLineTypes = (
  pairs: readonly Pair[],
  types: readonly LineType[],
  perMm: number,
  nextHandle: string,
): Pair[] =>
  withRecords(
    pairs,
    'LTYPE',
    types.map(({ name, shows, dashes }): Pair[] => [
      ['100', 'AcDbLinetypeTableRecord'],
      ['2', name],
      ['70', '0'],
      ['3', shows],
      // DXF Reference, LTYPE: 72 is always 65, the letter A
      ['72', '65'],
      ['73', String(dashes.length)],
      ['40', fixed(dashes.reduce((sum, dash) => sum + Math.abs(dash), 0) * perMm, 6)],
      ...dashes.flatMap((dash): Pair[] => [
        ['49', fixed(dash * perMm, 6)],
        ['74', '0'],
      ]),
    ]),
    nextHandle,
  );

function withRecords(
  pairs: readonly Pair[],
  name: string,
  records: readonly (readonly Pair[])[],
  nextHandle: string,
): Pair[] {
  const table = pairs.findIndex(
    (pair, i) => pair[0] === '2' && pair[1] === name && pairs[i - 1]?.[1] === 'TABLE',
  );
  const end = pairs.findIndex((pair, i) => i > table && pair[0] === '0' && pair[1] === 'ENDTAB');
  if (table < 0 || end < 0) throw new RangeError(`the DXF text has no ${name} table`);
  const owner = pairs[table + 1]![1];
  const first = Number.parseInt(nextHandle, 16);
  const added = records.flatMap((record, i): Pair[] => [
    ['0', name],
    ['5', (first + i).toString(16).toUpperCase()],
    ['330', owner],
    ['100', 'AcDbSymbolTableRecord'],
    ...record,
  ]);
  const count = pairs.slice(table, end).filter((pair) => pair[0] === '0' && pair[1] === name).length;
  const counted = pairs.map((pair, i): Pair => {
    const isCount = i > table && i < end && pair[0] === '70' && pairs[i - 1]?.[1] === 'AcDbSymbolTable';
    return isCount ? ['70', String(count + records.length)] : pair;
  });
  const seed = (first + records.length).toString(16).toUpperCase();
  return withHeader([...counted.slice(0, end), ...added, ...counted.slice(end)], '$HANDSEED', '5', seed);
}
