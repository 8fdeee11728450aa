import * as z from 'zod';
import { defaultIn } from './default-in.js';
import type { Derived, Given, Kind, Range } from './parameter.js';

type GivenNumber = z.ZodDefault<z.ZodNumber>;
type DerivedNumber = z.ZodOptional<z.ZodNumber>;

/** A length, mm. @example length({ min: 150, max: 600, default: 230, help: 'depth of the seat' }) */
export function length(of: Range & Given<number>): GivenNumber;
export function length(of: Range & Derived): DerivedNumber;
export function length(of: Range & (Given<number> | Derived)): GivenNumber | DerivedNumber {
  return numeric('length', z.number(), of);
}

/** An angle, degrees. @example angle({ min: 0, max: 20, default: 10, help: 'splay of the sides' }) */
export function angle(of: Range & Given<number>): GivenNumber;
export function angle(of: Range & Derived): DerivedNumber;
export function angle(of: Range & (Given<number> | Derived)): GivenNumber | DerivedNumber {
  return numeric('angle', z.number(), of);
}

/** The mass of a person or a load, kg: it is a fact and no size, so nothing but the person changes it. */
export const mass = (of: Range & Given<number>): GivenNumber =>
  numeric('mass', z.number(), of) as GivenNumber;

/** A whole number of things. @example count({ min: 1, max: 4, default: 2, help: 'tenons in each end' }) */
export function count(of: Range & Given<number>): GivenNumber;
export function count(of: Range & Derived): DerivedNumber;
export function count(of: Range & (Given<number> | Derived)): GivenNumber | DerivedNumber {
  return numeric('count', z.number().int(), of);
}

function numeric(
  kind: Kind,
  number: z.ZodNumber,
  of: Range & (Given<number> | Derived),
): GivenNumber | DerivedNumber {
  const ranged = number.min(of.min).max(of.max);
  if ('derived' in of) return ranged.optional().meta({ kind, ...of });
  if (!ranged.safeParse(of.default).success)
    throw new Error(`default ${of.default} is not a ${kind} from ${of.min} to ${of.max}: ${of.help}`);
  const inches = defaultIn({ kind, ...of }, 'in');
  if (!ranged.safeParse(inches).success)
    throw new Error(`default in inches, ${inches}, is not a ${kind} from ${of.min} to ${of.max}: ${of.help}`);
  return ranged.default(of.default).meta({ kind, ...of });
}
