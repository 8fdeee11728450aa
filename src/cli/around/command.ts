import type * as z from 'zod';
import type { Model } from '../../model/index.js';
import type { Surroundings } from './surroundings.js';

/** What a command is about: nothing, a name for something new, a model, or a model whose parameters are options too. */
export type About = 'nothing' | 'a name' | 'model' | 'model and parameters';

/** One call of a command. */
export interface Call {
  readonly around: Surroundings;
  /** The line as it was given, without the program's name. */
  readonly argv: readonly string[];
  readonly version: string;
  /** The named model. @throws Error in a command that is about none */
  readonly model: Model;
  /** The word after the command; empty in a command that is about nothing. */
  readonly subject: string;
  /** Parameters given as options, as text, by kebab-case name. */
  readonly raw: Readonly<Record<string, string>>;
}

/** A command of the program; its options are declared like a model's parameters. */
export interface Command<Shape extends z.ZodRawShape = z.ZodRawShape> {
  readonly name: string;
  readonly summary: string;
  readonly about: About;
  readonly parameters: z.ZodObject<Shape>;
  /** @returns the exit status */
  act(options: z.infer<z.ZodObject<Shape>>, call: Call): Promise<number>;
}

/** Exit statuses. */
export const DONE = 0;
export const FAULT = 1;
export const BAD_INPUT = 2;
export const FAILED_CHECKS = 3;
