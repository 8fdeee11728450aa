import { fixed, INCH, type Say, trimmed } from '../../length/index.js';

/** A column of a list: its name with the unit, and what stands in it for a row. */
export interface Column<Row> {
  readonly name: string;
  readonly of: (row: Row) => string;
}

/**
 * The list as rows of fields, the names first. Every row begins with the revision: a list has no title block to carry it.
 *
 * @param revision with the words of a failed design behind it when there are any
 */
export const tableOf = <Row>(
  columns: readonly Column<Row>[],
  rows: readonly Row[],
  revision: string,
): readonly (readonly string[])[] => [
  ['revision', ...columns.map((column) => column.name)],
  ...rows.map((row) => [revision, ...columns.map((column) => column.of(row))]),
];

/**
 * A length in the person's units: one column of mm to 0.01, or two of inches, as read off a rule and as a decimal to 0.0001.
 *
 * @param mm the length; undefined leaves the field empty
 */
export function lengthColumns<Row>(
  say: Say,
  name: string,
  mm: (row: Row) => number | undefined,
): readonly Column<Row>[] {
  const of = (print: (value: number) => string) => (row: Row) => {
    const value = mm(row);
    return value === undefined ? '' : print(value);
  };
  if (say.units === 'mm') return [{ name: `${name} (mm)`, of: of((value) => trimmed(value, 2)) }];
  return [
    { name: `${name} (in)`, of: of((value) => say.length(value)) },
    { name: `${name} (in decimal)`, of: of((value) => fixed(value / INCH, 4)) },
  ];
}
