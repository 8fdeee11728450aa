import { drawableOf } from '../board/index.js';
import { type FlowBlock, type Flowed, flow } from '../flow/index.js';
import type { TiledTemplate } from '../printed-template/index.js';
import { type Draft, type Orientation, pageOf } from '../sheet/index.js';

/** A part of a plan with an entry of its own in the outline. */
export interface Section {
  readonly title: string;
  readonly drafts: readonly Draft[];
  /** Draft numbers within the section that get an entry of their own. */
  readonly parts: readonly { readonly title: string; readonly at: number }[];
  readonly template?: TiledTemplate;
}

/** A section that is left out where there is nothing to say. */
export const when = (is: boolean, section: () => Section): readonly Section[] => (is ? [section()] : []);

/** Pages of text, tables and figures. */
export function textPages(
  title: string,
  id: string,
  orientation: Orientation,
  blocks: readonly FlowBlock[],
): Section {
  const page = pageOf('A4', orientation);
  const { pages, headings }: Flowed = flow(blocks, drawableOf(page));
  return {
    title,
    parts: headings.filter(({ level }) => level === 2).map(({ text, page: at }) => ({ title: text, at })),
    drafts: pages.map((entities, i) => ({
      id: `${id}-${i + 1}`,
      title: pages.length > 1 ? `${title}, ${i + 1} of ${pages.length}` : title,
      page,
      documentType: 'text',
      scale: undefined,
      entities,
      cautions: [],
    })),
  };
}

/** Drawings that are there already, each with its entry. */
export function drawings(
  title: string,
  groups: readonly { readonly title: string; readonly drafts: readonly Draft[] }[],
): Section {
  let at = 0;
  const parts = groups.map((group) => {
    const part = { title: group.title, at };
    at += group.drafts.length;
    return part;
  });
  return { title, parts, drafts: groups.flatMap(({ drafts }) => drafts) };
}
