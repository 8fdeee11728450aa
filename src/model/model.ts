import * as z from 'zod';
import type { Design } from '../assembly/index.js';
import type { WoodTold } from '../joinery/index.js';
import type { Units } from '../length/index.js';
import { cutterDiameters } from '../tables/index.js';
import { optionName } from './option-name.js';
import { parameterMeta } from './parameter.js';

/** What a model may choose from when a dimension is not given. */
export interface Tools {
  /** What sizes that are left out are round in; mm when it is left out. */
  readonly units?: Units;
  /** Diameters of the straight cutters at hand, mm; at least one. */
  readonly cutters: readonly number[];
  /** How deep a cutter of a diameter cuts, mm; the deepest at hand for one that is not. Unknown when left out. */
  readonly deepest?: (cutter: number) => number | undefined;
  /** What its wood goes through, and what its tenons are cut from. */
  readonly wood?: WoodTold;
}

/** Parameters, and how a design is made from them. */
export interface Model<Shape extends z.ZodRawShape = z.ZodRawShape> {
  /** The word the person types, and the name of the model's file: letters, digits and hyphens. */
  readonly name: string;
  readonly title: string;
  /** One sentence: what it makes. */
  readonly summary: string;
  /** One schema gives types, defaults, ranges, help and error text. Names are camelCase. */
  readonly parameters: z.ZodObject<Shape>;
  /** The file that tells it, when it is told in one: what every paper's revision hangs on besides the parameters. */
  readonly told?: string;
  /** The name of that file, without its folders. */
  readonly toldIn?: string;
  /** The values with every size that was left out and can be told beforehand; the same values where there is none. */
  complete(values: z.infer<z.ZodObject<Shape>>, tools?: Tools): z.infer<z.ZodObject<Shape>>;
  /**
   * @param tools the usual metric cutters when left out
   * @throws TenonwrightError when the values fit their ranges but not each other
   */
  build(values: z.infer<z.ZodObject<Shape>>, tools?: Tools): Design;
}

/** A model as it is written: `parameters` are a plain object of parameter kinds. */
export interface ModelText<Shape extends z.ZodRawShape>
  extends Omit<Model<Shape>, 'parameters' | 'build' | 'complete'> {
  readonly parameters: Shape;
  complete?(values: z.infer<z.ZodObject<Shape>>, tools: Tools): z.infer<z.ZodObject<Shape>>;
  build(values: z.infer<z.ZodObject<Shape>>, tools: Tools): Design;
}

/** The usual metric cutters. */
const USUAL: Tools = { cutters: cutterDiameters() };

/**
 * A model, checked for what would break it later.
 *
 * @throws Error for a name that cannot be typed, a parameter without metadata, or two parameters with one option name
 */
export function defineModel<Shape extends z.ZodRawShape>(of: ModelText<Shape>): Model<Shape> {
  if (!/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(of.name))
    throw new Error(`model name '${of.name}' must be lower-case letters, digits and hyphens`);
  const options = new Set<string>();
  for (const [name, schema] of Object.entries(of.parameters)) {
    if (!/^[a-z][a-zA-Z0-9]*$/.test(name)) throw new Error(`parameter name '${name}' must be camelCase`);
    if (options.has(optionName(name))) throw new Error(`two parameters are named --${optionName(name)}`);
    options.add(optionName(name));
    parameterMeta(name, schema);
  }
  return {
    name: of.name,
    title: of.title,
    summary: of.summary,
    parameters: z.object(of.parameters),
    complete: (values, tools = USUAL) => of.complete?.(values, tools) ?? values,
    build: (values, tools = USUAL) => of.build(values, tools),
  };
}
