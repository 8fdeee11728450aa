import type * as z from 'zod';
import { TenonwrightError } from '../errors.js';
import type { Model, Tools } from './model.js';

/**
 * Whether a design can be put together with one of its values changed; whether it is sound the checks tell.
 *
 * @param values mm and degrees, as `readParameters` returns them
 * @returns asks of one parameter, by its camelCase name; a fault of the model is thrown on
 */
export const canBeBuilt =
  (model: Model, values: Readonly<Record<string, unknown>>, tools?: Tools) =>
  (name: string, value: number): boolean => {
    try {
      model.build({ ...values, [name]: value } as z.infer<Model['parameters']>, tools);
      return true;
    } catch (error) {
      if (error instanceof TenonwrightError) return false;
      throw error;
    }
  };
