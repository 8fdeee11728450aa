import * as z from 'zod';
import type { Derived, Given } from './parameter.js';

type Choices = readonly [string | number, ...(string | number)[]];

/** One of a few words or numbers. @example choice(['loose', 'tight'], { default: 'tight', help: 'how the tenon fits' }) */
export function choice<const T extends Choices>(
  choices: T,
  of: Given<NoInfer<T[number]>>,
): z.ZodDefault<z.ZodLiteral<T[number]>>;
export function choice<const T extends Choices>(
  choices: T,
  of: Derived,
): z.ZodOptional<z.ZodLiteral<T[number]>>;
export function choice(
  choices: Choices,
  of: Given<string | number> | Derived,
): z.ZodDefault<z.ZodLiteral> | z.ZodOptional<z.ZodLiteral> {
  const one = z.literal([...choices]);
  const meta = { kind: 'choice', choices, ...of };
  if ('derived' in of) return one.optional().meta(meta);
  for (const start of [of.default, of.inches ?? of.default])
    if (!choices.includes(start))
      throw new Error(`default ${start} is none of ${choices.join(', ')}: ${of.help}`);
  return one.default(of.default).meta(meta);
}

/** Yes or no. @example flag({ default: false, help: 'wedge the tenons' }) */
export function flag(of: Given<boolean>): z.ZodDefault<z.ZodBoolean>;
export function flag(of: Derived): z.ZodOptional<z.ZodBoolean>;
export function flag(of: Given<boolean> | Derived): z.ZodDefault<z.ZodBoolean> | z.ZodOptional<z.ZodBoolean> {
  const meta = { kind: 'flag', ...of };
  return 'derived' in of ? z.boolean().optional().meta(meta) : z.boolean().default(of.default).meta(meta);
}

/** Lengths in a list. Given by who works in inches, it begins with `in:`, unless it says another unit itself. */
export const lengthList = (of: Given<string>): z.ZodDefault<z.ZodString> =>
  z
    .string()
    .default(of.default)
    .meta({ kind: 'text', listsLengths: true, ...of });

/** Any words. @example text({ default: 'beech', help: 'species of the boards' }) */
export function text(of: Given<string>): z.ZodDefault<z.ZodString>;
export function text(of: Derived): z.ZodOptional<z.ZodString>;
export function text(of: Given<string> | Derived): z.ZodDefault<z.ZodString> | z.ZodOptional<z.ZodString> {
  const meta = { kind: 'text', ...of };
  return 'derived' in of ? z.string().optional().meta(meta) : z.string().default(of.default).meta(meta);
}
