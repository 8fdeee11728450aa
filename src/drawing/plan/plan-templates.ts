import { type Board, templateOutline } from '../../board/index.js';
import { rulesOf } from '../../length/index.js';
import { printedTemplates } from '../../shop/index.js';
import { type TiledTemplate, templateArtwork, tiledTemplate } from '../printed-template/index.js';
import type { DrawingUnits } from '../sheet/index.js';

/** What templates are made for. mm */
export interface TemplatesRequest {
  readonly boards: readonly Board[];
  readonly cutter: number;
  readonly bush?: number;
  readonly units: DrawingUnits;
}

/**
 * The templates a design wants, tiled: one for every shape of board that is routed along its outline, or that has something cut
 * into a wide face. A board and its mirror image share one, turned over.
 */
export function templatesOf({ boards, cutter, bush, units }: TemplatesRequest): readonly TiledTemplate[] {
  const follower = { cutter, ...(bush === undefined ? {} : { bush }) };
  const names = (of: readonly Board[]) => of.map(({ name }) => name);
  return printedTemplates(boards)
    .filter(({ serves: [board] }) => templateOutline(board!, follower).length > 0)
    .map(({ serves, turnedOver }) =>
      tiledTemplate(
        templateArtwork(serves[0]!, {
          ...follower,
          units: rulesOf(units)[0]!,
          drawn: units,
          serves: names(serves),
          turnedOver: names(turnedOver),
        }),
      ),
    );
}
