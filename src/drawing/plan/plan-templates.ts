import { type Board, templateOutline } from '../../board/index.js';
import { type BoardKind, boardKinds, outlineTemplates, type Shop } from '../../shop/index.js';
import { type TiledTemplate, templateArtwork, tiledTemplate } from '../printed-template/index.js';
import type { DrawingUnits } from '../sheet/index.js';
import { entersWideFace } from '../template/index.js';

/** What templates are made for. mm */
export interface TemplatesRequest {
  readonly boards: readonly Board[];
  readonly shop: Shop;
  readonly cutter: number;
  readonly bush?: number;
  readonly units: DrawingUnits;
}

/**
 * The templates a design wants, tiled: one for every shape of board that is routed along its outline, or that has something cut
 * into a wide face. A board and its mirror image share one, turned over.
 */
export function templatesOf({
  boards,
  shop,
  cutter,
  bush,
  units,
}: TemplatesRequest): readonly TiledTemplate[] {
  const routed = new Set(outlineTemplates(boards, shop).flatMap((template) => template.boards));
  const wanted = ({ id, mortises, holes, slots }: Board) =>
    routed.has(id) || [...mortises, ...holes, ...slots].some(({ face }) => entersWideFace(face));
  const follower = { cutter, ...(bush === undefined ? {} : { bush }) };
  const kinds = boardKinds(boards);
  const order = kinds.map((kind) => kind.boards[0]!.id);
  return kinds
    .filter(({ mirrorOf }, i) => mirrorOf === undefined || order.indexOf(mirrorOf) > i)
    .filter(({ boards: [board] }) => wanted(board!) && templateOutline(board!, follower).length > 0)
    .map((kind) => {
      const mirrored = kinds.find((other) => other.boards[0]!.id === kind.mirrorOf);
      const names = (of: BoardKind | undefined) => of?.boards.map(({ name }) => name) ?? [];
      const artwork = templateArtwork(kind.boards[0]!, {
        ...follower,
        units: units === 'in' ? 'in' : 'mm',
        drawn: units,
        serves: names(kind),
        turnedOver: names(mirrored),
      });
      return tiledTemplate(artwork);
    });
}
