import * as z from 'zod';
import { INCH, trimmed, type Units } from '../../length/index.js';
import { derivedText, optionName, type ParameterMeta, parameterMeta } from '../../model/index.js';
import { builtInShop } from './built-in-shop.js';
import type { Shop } from './shop.js';
import { shopFile } from './shop-file.js';

/** Characters in a line of comment. */
const COMMENT = 96;

/**
 * A shop as a documented shop file: every name there is, with its help and range; what the shop does not say stands there as
 * a comment. Read back, it is the same shop.
 *
 * @param units what its lengths are written in
 * @param shop the built-in one when left out
 */
export function shopExample(units: Units, shop: Shop = builtInShop(units)): string {
  const head = comment(
    'What is at hand in the shop. Give it with --shop; whatever you leave out makes the figures that need it "not verified", never "passed". Lengths may carry their own unit: 8 mm, 5/16 in.',
    '',
  );
  const said: Readonly<Record<string, unknown>> = { ...shop, units };
  return `${[...head, ...groupLines(shopFile, said, '', units)].join('\n')}\n`;
}

function groupLines(
  schema: z.ZodObject,
  said: Readonly<Record<string, unknown>>,
  indent: string,
  units: Units,
): readonly string[] {
  return Object.entries(schema.shape).flatMap(([name, field]) => [
    ...(indent === '' ? [''] : []),
    ...fieldLines(name, field as z.ZodType, said[name], indent, units),
  ]);
}

function fieldLines(
  name: string,
  field: z.ZodType,
  value: unknown,
  indent: string,
  units: Units,
): readonly string[] {
  const key = `${indent}${optionName(name)}:`;
  const inner = field instanceof z.ZodOptional ? (field.unwrap() as z.ZodType) : field;
  const help = (field.meta() as { help: string }).help;
  if (inner instanceof z.ZodObject) {
    const lines = groupLines(inner, (value ?? {}) as Record<string, unknown>, `${indent}  `, units);
    return [...comment(help, indent), ...(value === undefined ? hidden([key, ...lines]) : [key, ...lines])];
  }
  if (inner instanceof z.ZodRecord) {
    const entries = Object.entries((value ?? {}) as Record<string, unknown>);
    const lines = entries.map(([one, is]) => `${indent}  ${optionName(one)}: ${plain(is)}`);
    return [...comment(help, indent), ...(lines.length === 0 ? [`${key} {}`] : [key, ...lines])];
  }
  if (inner instanceof z.ZodArray && inner.element instanceof z.ZodObject)
    return rowLines(key, help, inner.element, (value ?? []) as readonly object[], indent, units);
  if (inner instanceof z.ZodArray) {
    const list = ((value ?? []) as readonly number[]).map((one) => exact(one, units)).join(', ');
    return [
      ...comment(help, indent),
      value === undefined ? `${indent}# ${optionName(name)}: []` : `${key} [${list}]`,
    ];
  }
  const meta = parameterMeta(name, field);
  const note = comment(`${help} ${allowedText(meta, units)}`, indent);
  return [
    ...note,
    value === undefined ? `${indent}# ${optionName(name)}:` : `${key} ${written(meta, value, units)}`,
  ];
}

/** Rows of a list: what each name means once above, then a line a row. */
function rowLines(
  key: string,
  help: string,
  each: z.ZodObject,
  rows: readonly object[],
  indent: string,
  units: Units,
): readonly string[] {
  const fields = Object.entries(each.shape).map(
    ([name, field]) => [name, parameterMeta(name, field as z.ZodType)] as const,
  );
  const about = fields.flatMap(([name, meta]) =>
    comment(`  ${optionName(name)}: ${meta.help} ${allowedText(meta, units)}`, indent),
  );
  const lines = rows.map((row) => {
    const said = row as Readonly<Record<string, unknown>>;
    const parts = fields.flatMap(([name, meta]) =>
      said[name] === undefined ? [] : [`${optionName(name)}: ${quoted(written(meta, said[name], units))}`],
    );
    return `${indent}  - { ${parts.join(', ')} }`;
  });
  return [...comment(help, indent), ...about, ...(lines.length === 0 ? [`${key} []`] : [key, ...lines])];
}

const hidden = (lines: readonly string[]): readonly string[] =>
  lines.map((line) => (line.trimStart().startsWith('#') ? line : `# ${line}`));

/** What may be given, and what leaving it out means. */
export function allowedText(meta: ParameterMeta, units: Units): string {
  const between =
    meta.choices !== undefined
      ? meta.choices.join(', ')
      : meta.min === undefined
        ? ''
        : meta.kind === 'length'
          ? `${exact(meta.min, units)} to ${exact(meta.max!, units)}`
          : `${meta.min} to ${meta.max}`;
  const parts = [between, meta.derived === undefined ? '' : `when left out: ${derivedText(meta, units)}`];
  const told = parts.filter((part) => part !== '').join('; ');
  return told === '' ? '' : `(${told})`;
}

const written = (meta: ParameterMeta, value: unknown, units: Units): string =>
  meta.kind === 'length' ? exact(Number(value), units) : plain(value);

/** A length that reads back as the same number: whole 64ths of an inch as a fraction, all else in mm. */
function exact(mm: number, units: Units): string {
  const lines = Math.round((mm * 64) / INCH);
  if (units === 'mm' || (lines * (INCH * 10)) / 640 !== mm) return `${trimmed(mm, 6)} mm`;
  const [wholes, over] = [Math.floor(lines / 64), lines % 64];
  if (over === 0) return `${wholes} in`;
  const shared = [64, 32, 16, 8, 4, 2, 1].find((by) => over % by === 0)!;
  return `${wholes > 0 ? `${wholes} ` : ''}${over / shared}/${64 / shared} in`;
}

const plain = (value: unknown): string => (typeof value === 'string' ? value : JSON.stringify(value));

/** In a row between braces a comma or a colon would end a word. */
const quoted = (words: string): string => (/[,:{}[\]#]/.test(words) ? JSON.stringify(words) : words);

function comment(words: string, indent: string): readonly string[] {
  const lead = /^ */.exec(words)![0];
  const lines: string[] = [];
  for (const word of words.trim().split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < COMMENT - indent.length)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines.map((line) => `${indent}# ${lead}${line}`);
}
