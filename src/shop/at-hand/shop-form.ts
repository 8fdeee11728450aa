import * as z from 'zod';
import type { Units } from '../../length/index.js';
import { optionName, type ParameterMeta, parameterMeta } from '../../model/index.js';
import { isGroup } from './read-shop.js';
import { allowedText } from './shop-example.js';
import { shopFile } from './shop-file.js';

/** What a shop file may say at one place, in words, and what this one says there: a form is made of it. */
export type ShopField = {
  /** As the file has it. */
  readonly name: string;
  readonly help: string;
} & (
  | {
      readonly kind: 'value';
      /** What a bare number is: only lengths have units. */
      readonly length: boolean;
      /** Several, with commas between. */
      readonly several: boolean;
      readonly choices: readonly string[];
      readonly text: string;
    }
  | { readonly kind: 'group'; readonly fields: readonly ShopField[] }
  | {
      readonly kind: 'rows';
      /** A row nothing was said in. */
      readonly blank: readonly ShopField[];
      readonly rows: readonly (readonly ShopField[])[];
    }
  /** Names of its own, one a line, each with a value. */
  | { readonly kind: 'lines'; readonly text: string }
);

/**
 * A shop file as a form: every place the schema has, with the person's own words where the file says something, right or wrong.
 *
 * @param raw the file's YAML as plain values
 * @param units ranges are told in
 */
export const shopForm = (raw: unknown, units: Units): readonly ShopField[] => fieldsOf(shopFile, raw, units);

function fieldsOf(schema: z.ZodObject, raw: unknown, units: Units): readonly ShopField[] {
  const said = new Map(isGroup(raw) ? Object.entries(raw).map(([name, is]) => [optionName(name), is]) : []);
  return Object.entries(schema.shape).map(([name, field]) =>
    fieldOf(optionName(name), field as z.ZodType, said.get(optionName(name)), units),
  );
}

function fieldOf(name: string, field: z.ZodType, said: unknown, units: Units): ShopField {
  const inner = field instanceof z.ZodOptional ? (field.unwrap() as z.ZodType) : field;
  const { help } = field.meta() as { help: string };
  if (inner instanceof z.ZodObject)
    return { name, help, kind: 'group', fields: fieldsOf(inner, said, units) };
  if (inner instanceof z.ZodRecord) {
    const entries = isGroup(said) ? Object.entries(said) : [];
    return {
      name,
      help,
      kind: 'lines',
      text: entries.map(([key, is]) => `${key}: ${worded(is)}`).join('\n'),
    };
  }
  if (inner instanceof z.ZodArray && inner.element instanceof z.ZodObject) {
    const each = inner.element;
    const rows = Array.isArray(said) ? said.map((row: unknown) => fieldsOf(each, row, units)) : [];
    return { name, help, kind: 'rows', blank: fieldsOf(each, undefined, units), rows };
  }
  const several = inner instanceof z.ZodArray;
  // a list says of itself what each of it may be
  const meta = several ? (field.meta() as unknown as ParameterMeta) : parameterMeta(name, field);
  const length = several || meta.kind === 'length';
  return {
    name,
    help: [help, allowedText(length ? { ...meta, kind: 'length' } : meta, units)].filter(Boolean).join(' '),
    kind: 'value',
    length,
    several,
    choices: (meta.choices ?? []).map(String),
    text: Array.isArray(said) ? said.map(worded).join(', ') : worded(said),
  };
}

const worded = (said: unknown): string =>
  said === undefined || said === null ? '' : typeof said === 'object' ? JSON.stringify(said) : String(said);
