import { stockVolume } from '../board/index.js';
import { SolidError } from '../errors.js';
import { allSolids, type Solids } from './solids.js';

/**
 * Every body is sound and holds what its data promise, before anything is written.
 *
 * The kernel keeps bodies closed; a status other than `NoError`, nothing left, or a stock whose volume is not that of its
 * outline and bevels is refused here. What cavities do to each other is for the checks to say.
 *
 * @throws SolidError naming the body
 */
export function gate(solids: Solids): void {
  for (const { id, body } of allSolids(solids)) {
    const state = body.status();
    if (state !== 'NoError')
      throw new SolidError(
        'body-unsound',
        `${id}: the kernel reports ${state}: check the sizes it is made from`,
      );
    if (!(body.volume() > 0)) {
      throw new SolidError(
        'body-empty',
        `${id}: nothing is left of it after its cuts: check its outline, bevels and cavities`,
      );
    }
  }
  for (const { id, board, stock } of solids.boards.values()) {
    const expected = stockVolume(board);
    const found = stock.volume();
    if (Math.abs(found - expected.volume) > expected.allowance) {
      throw new SolidError(
        'body-volume',
        `${id}: its body holds ${found.toFixed(2)} mm³, its outline and bevels say ${expected.volume.toFixed(2)} mm³; facets explain ${expected.allowance.toFixed(2)} mm³ of that`,
      );
    }
  }
}
