import { type DrawnFigure, type FlowBlock, flow, told } from '../flow/index.js';
import type { TiledTemplate } from '../printed-template/index.js';
import { type Draft, drawableOf, pageOf, type SheetEntity } from '../sheet/index.js';

/** A part of a plan with an entry of its own in the outline. */
export interface Section {
  readonly title: string;
  /** Where it is needed: `at the saw`. */
  readonly place: string;
  readonly drafts: readonly Draft[];
  /** How much of each page is taken, from 0 to 1. */
  readonly shares: readonly number[];
  /** Draft numbers within the section that get an entry of their own. */
  readonly parts: readonly { readonly title: string; readonly at: number }[];
  readonly template?: TiledTemplate;
}

/** What pages of a plan hold, mm: both papers show the same. */
export const AREA = drawableOf(pageOf('A4', 'portrait'));
export const ROOM = { width: AREA.maxX - AREA.minX, height: AREA.maxY - AREA.minY };

/**
 * Pages of text, tables and figures.
 *
 * @param map a small figure for the foot of every page that has room for it
 */
export function section(
  title: string,
  id: string,
  place: string,
  blocks: readonly FlowBlock[],
  map?: DrawnFigure,
): Section {
  const { pages, shares, headings } = flow(blocks, AREA);
  return {
    title,
    place,
    shares,
    parts: headings.filter(({ level }) => level === 2).map(({ text, page: at }) => ({ title: text, at })),
    drafts: pages.map((entities, i) => ({
      id: `${id}-${i + 1}`,
      title: pages.length > 1 ? `${title.split(':')[0]}, ${i + 1} of ${pages.length}` : title,
      page: pageOf('A4', 'portrait'),
      entities: [...entities, ...atFoot(map, shares[i] ?? 1)],
    })),
  };
}

/** A figure in the right corner at the foot of a page, when so much of it is left. */
function atFoot(map: DrawnFigure | undefined, share: number): readonly SheetEntity[] {
  if (!map || ROOM.height * (1 - share) < map.height + 2) return [];
  return told(map, [AREA.maxX - map.width, AREA.minY]);
}
