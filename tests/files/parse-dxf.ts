import type { IDxf } from 'dxf-parser';
import * as parser from 'dxf-parser';

// The package's types describe its module build; what Node loads is the bundle, whose whole export is the class.
const Parser = parser.default as unknown as new () => { parseSync(text: string): IDxf | null };

/** A second reader of DXF, made by others. */
export function parseDxf(bytes: Uint8Array): IDxf {
  const drawing = new Parser().parseSync(new TextDecoder().decode(bytes));
  if (drawing === null) throw new Error('the DXF text could not be read');
  return drawing;
}
