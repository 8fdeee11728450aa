import type * as z from 'zod';
import type { parameters } from './parameters.js';
import type { Size } from './usual.js';

/** What a person says of the jig; mm. */
export type JigGiven = z.infer<z.ZodObject<typeof parameters>>;

/** The same with the sizes that were left out worked out, but for those the layout tells. */
export type JigValues = Omit<JigGiven, Size> & {
  readonly [One in Size]: number;
};
