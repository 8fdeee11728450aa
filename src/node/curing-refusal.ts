import { InputError, TenonwrightError } from '../errors.js';
import type { DesignRequest } from '../files/index.js';
import { toolsOf } from '../shop/index.js';
import { cureOfRefusal } from '../verdict/index.js';

/** When the values do not go together, tells with the refusal which one would do. */
export async function curingRefusal<T>(request: DesignRequest, act: () => Promise<T>): Promise<T> {
  try {
    return await act();
  } catch (error) {
    if (!request.cures || !(error instanceof TenonwrightError) || !cannotBeBuilt(request, error)) throw error;
    const cure = await cureOfRefusal(request, request.values, request.given);
    if (!cure) throw error;
    throw new InputError(error.code, (say) => {
      const told = error.explain(say);
      // under a line that is quoted it would look like a part of the line
      return `${told}${told.includes('\n') ? '\n' : '; '}tried, and it works: ${cure.typed}`;
    });
  }
}

function cannotBeBuilt({ model, values, shop }: DesignRequest, { code }: TenonwrightError): boolean {
  try {
    model.build(values, toolsOf(shop));
    return false;
  } catch (error) {
    return error instanceof TenonwrightError && error.code === code;
  }
}
