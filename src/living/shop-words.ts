/** What a person wrote in the form of a shop, place by place; what is empty is not said. */
export type ShopWords = { readonly name: string } & (
  | { readonly text: string; readonly several: boolean }
  | { readonly fields: readonly ShopWords[] }
  | { readonly rows: readonly (readonly ShopWords[])[] }
  | { readonly lines: string }
);

/** The words of a form as a shop file for the command line. */
export function shopYaml(words: readonly ShopWords[]): string {
  const lines = words.flatMap((one) => linesOf(one, ''));
  return `${lines.join('\n')}\n`;
}

function linesOf(said: ShopWords, indent: string): readonly string[] {
  const deeper = `${indent}  `;
  const below = (lines: readonly string[]): readonly string[] =>
    lines.length === 0 ? [] : [`${indent}${said.name}:`, ...lines];
  if ('text' in said) return said.text === '' ? [] : [`${indent}${said.name}: ${value(said)}`];
  if ('fields' in said) return below(said.fields.flatMap((one) => linesOf(one, deeper)));
  if ('lines' in said)
    return below(
      said.lines
        .split('\n')
        .filter((line) => line.trim() !== '')
        .map((line) => `${deeper}${line.trim()}`),
    );
  return below(said.rows.map((row) => `${deeper}- { ${row.flatMap((one) => linesOf(one, '')).join(', ')} }`));
}

const value = ({ text, several }: { readonly text: string; readonly several: boolean }): string =>
  several
    ? `[${text
        .split(',')
        .map((one) => word(one.trim()))
        .join(', ')}]`
    : word(text);

/** A figure with its unit is a word to YAML; what could be anything else stands in quotes. */
const word = (text: string): string =>
  /^\d+(\.\d+)?$|^\d[\d ./]* (mm|cm|in)$|^[a-z][a-z ]*$/i.test(text) &&
  !/^(null|true|false|yes|no|on|off)$/i.test(text)
    ? text
    : JSON.stringify(text);
