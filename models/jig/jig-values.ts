import type { z } from 'zod';
import type { parameters } from './parameters.js';

/** What a person says of the jig; mm. */
export type JigValues = z.infer<z.ZodObject<typeof parameters>>;
