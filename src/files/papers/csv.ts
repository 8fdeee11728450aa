/**
 * Rows as CSV text: comma between fields, CR LF after every row, the first row the names of the columns (RFC 4180, section 2).
 *
 * @throws RangeError when a row has more or fewer fields than the first: a fault of the program
 * @example csv([['size (in)'], ['1-3/4"']]) // 'size (in)\r\n"1-3/4"""\r\n'
 */
export function csv(rows: readonly (readonly string[])[]): string {
  const fields = rows[0]?.length ?? 0;
  const odd = rows.findIndex((row) => row.length !== fields);
  if (odd >= 0) throw new RangeError(`row ${odd} has ${rows[odd]!.length} fields, the first has ${fields}`);
  return rows.map((row) => `${row.map(quoted).join(',')}\r\n`).join('');
}

/** A field with a comma, a quote or a line break is enclosed in quotes, and its quotes are doubled (RFC 4180, 2.6 and 2.7). */
const quoted = (field: string): string =>
  /[",\r\n]/.test(field) || field !== field.trim() ? `"${field.replaceAll('"', '""')}"` : field;
