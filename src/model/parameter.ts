import type * as z from 'zod';
import type { Say } from '../length/index.js';

/** How a parameter is worked out, in words; lengths are put into words by the person's voice. */
export type DerivedText = string | ((say: Say) => string);

export type Kind = 'length' | 'angle' | 'mass' | 'count' | 'choice' | 'flag' | 'text';

/** What a parameter's schema carries beside its type; kept in the schema's own metadata. Lengths mm, angles degrees, masses kg. */
export interface ParameterMeta {
  readonly kind: Kind;
  /** A sentence for the person. */
  readonly help: string;
  /** What it is called in a sentence, `seat length`; its option name with blanks when absent. */
  readonly label?: string;
  readonly min?: number;
  readonly max?: number;
  readonly choices?: readonly (string | number)[];
  /** Absent for a derived parameter. */
  readonly default?: string | number | boolean;
  /** The default of who works in inches: inches for a length; the same as {@link default} when absent. */
  readonly inches?: string | number;
  /** How a derived parameter is worked out when it is not given. */
  readonly derived?: DerivedText;
  /** A text that lists lengths: it may begin with what its bare numbers are in, `in: 1-2 3.5; …`; mm when it does not. */
  readonly listsLengths?: boolean;
}

/** What every parameter says of itself. */
export interface Told {
  readonly help: string;
  readonly label?: string;
}

/** A parameter with a value to start from. */
export interface Given<T> extends Told {
  readonly default: T;
  /** What who works in inches starts from, round there: inches for a length. */
  readonly inches?: T;
}

/** A parameter the model works out when it is not given: its type is optional. */
export interface Derived extends Told {
  readonly derived: DerivedText;
}

/** Both ends are allowed values. */
export interface Range {
  readonly min: number;
  readonly max: number;
}

/**
 * What a parameter's schema says of itself.
 *
 * @throws Error when the schema was not made by one of the parameter kinds: a fault of the model
 */
export function parameterMeta(name: string, schema: z.core.$ZodType): ParameterMeta {
  const meta = (schema as z.ZodType).meta() as unknown as ParameterMeta | undefined;
  if (meta?.kind === undefined)
    throw new Error(
      `parameter ${name} is a bare schema: make it with length, angle, mass, count, choice, flag or text`,
    );
  return meta;
}
