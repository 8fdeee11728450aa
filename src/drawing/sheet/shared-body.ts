import { movedEntities } from './moved.js';
import type { Page } from './page.js';
import type { Sheet, SheetEntity } from './sheet.js';

/**
 * What a sheet shows: a body that every paper shows, and what is its own.
 *
 * @param laid the page the body was laid out on
 * @param page the sheet's own
 */
export function withBody(
  body: readonly SheetEntity[],
  laid: Page,
  page: Page,
  own: readonly SheetEntity[],
): Pick<Sheet, 'entities' | 'shared'> {
  const by = [page.live.minX - laid.live.minX, page.live.minY - laid.live.minY] as const;
  return {
    // a writer that takes the body as it was laid out needs no copy of it
    get entities() {
      return [...(by[0] === 0 && by[1] === 0 ? body : movedEntities(body, by)), ...own];
    },
    shared: { body, height: laid.height, by, own },
  };
}
