import type { PieceMap } from '../figure/index.js';
import { type FlowBlock, type Flowed, flow, told } from '../flow/index.js';
import type { TiledTemplate } from '../printed-template/index.js';
import { type Draft, drawableOf, pageOf, type SheetEntity } from '../sheet/index.js';
import { emptyPlace } from './map-place.js';

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

/** Between the words of a page and the map below them, mm. */
const KEPT_AIR = 4;

/**
 * Pages of text, tables and figures.
 *
 * @param map a small picture of the piece for every page
 */
export function section(
  title: string,
  id: string,
  place: string,
  blocks: readonly FlowBlock[],
  map?: PieceMap,
): Section {
  const { pages, shares, headings, maps } = map ? mapped(blocks, map) : { ...flow(blocks, AREA), maps: [] };
  return {
    title,
    place,
    shares,
    parts: headings.filter(({ level }) => level === 2).map(({ text, page: at }) => ({ title: text, at })),
    drafts: pages.map((entities, i) => ({
      id: `${id}-${i + 1}`,
      title: pages.length > 1 ? `${title.split(':')[0]}, ${i + 1} of ${pages.length}` : title,
      page: pageOf('A4', 'portrait'),
      entities: [...entities, ...(maps[i] ?? [])],
    })),
  };
}

type Mapped = Flowed & {
  /** What shows the map on each page; undefined on one without. */
  readonly maps: readonly (readonly SheetEntity[] | undefined)[];
};

/** Pages with a map on each; a full page keeps room for it at its foot where that costs no page more. */
function mapped(blocks: readonly FlowBlock[], map: PieceMap): Mapped {
  const mapOn = ({ pages, about }: Flowed, i: number) => {
    const found = emptyPlace(pages[i]!, AREA, map(about[i]!));
    return found && told(found.figure, found.at);
  };
  /** @param before the maps of the first pages, which are as they were */
  const withMaps = (flowed: Flowed, before: Mapped['maps'] = []): Mapped => ({
    ...flowed,
    maps: flowed.pages.map((_, i) => (i < before.length ? before[i] : mapOn(flowed, i))),
  });
  const least = Math.min(...map(new Set()).map(({ height }) => height)) + KEPT_AIR;
  let best = withMaps(flow(blocks, AREA));
  const kept = new Map<number, number>();
  for (let i = 0; i < best.pages.length; i += 1) {
    if (best.maps[i]) continue;
    const flowed = flow(blocks, AREA, new Map([...kept, [i, least]]));
    const isWorse =
      flowed.pages.length > best.pages.length || flowed.shares.slice(0, -1).some((one) => one < 0.5);
    if (isWorse) continue;
    const shown = mapOn(flowed, i);
    if (!shown) continue;
    kept.set(i, least);
    best = withMaps(flowed, [...best.maps.slice(0, i), shown]);
  }
  return best;
}
