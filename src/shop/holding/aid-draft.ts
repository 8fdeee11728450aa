import type { Board } from '../../board/index.js';
import type { Aid, Holding } from './holding.js';

/** An aid before it has its name: drafts with one key are one piece. */
export interface AidDraft {
  /** Everything that makes two pieces the same. */
  readonly key: string;
  /** The name it gets when no other draft asks for it: `wedge-10`. */
  readonly wanted: string;
  readonly kind: Aid['kind'];
  /** `10° wedge`; the purpose goes on with what it is for. */
  readonly what: string;
  readonly make: (id: string) => Board;
}

/** A mortise's holding whose aids are named by their keys, and the drafts of those aids. */
export interface HeldDraft {
  readonly holding: Holding;
  readonly drafts: readonly AidDraft[];
}

/**
 * Names every aid once and writes the names into the holdings: the wanted name, or the same with `-2`, `-3` when pieces of
 * different sizes want it. As many are made as the hungriest set-up needs at once.
 */
export function namedAids(
  held: readonly HeldDraft[],
  design: string,
): { readonly holdings: readonly Holding[]; readonly aids: readonly Aid[] } {
  const drafts = new Map(held.flatMap((one) => one.drafts.map((draft) => [draft.key, draft] as const)));
  const taken = new Map<string, number>();
  const names = new Map<string, string>();
  for (const { key, wanted } of drafts.values()) {
    const nth = (taken.get(wanted) ?? 0) + 1;
    taken.set(wanted, nth);
    names.set(key, nth === 1 ? wanted : `${wanted}-${nth}`);
  }
  const nameOf = (key: string): string => names.get(key)!;
  const aids = [...drafts.values()].map((draft): Aid => {
    const users = held.filter((one) => one.drafts.some(({ key }) => key === draft.key));
    const boards = [...new Set(users.map((one) => one.holding.board))];
    return {
      board: draft.make(nameOf(draft.key)),
      kind: draft.kind,
      purpose: `${draft.what}, for ${mortises(users.length)} in ${boards.join(', ')} of ${design}`,
      count: Math.max(...users.map((one) => one.drafts.filter(({ key }) => key === draft.key).length)),
      // every one of them is the same piece turned over for the other hand
      handed: false,
    };
  });
  return { holdings: held.map(({ holding }) => renamed(holding, nameOf)), aids };
}

const mortises = (count: number): string => (count === 1 ? 'the mortise' : `${count} mortises`);

function renamed(holding: Holding, nameOf: (key: string) => string): Holding {
  const named = <T extends { readonly aid: string }>(use: T): T => ({ ...use, aid: nameOf(use.aid) });
  const { near, far, guide, window } = holding;
  return {
    ...holding,
    ...(near && { near: near.wedge ? { ...near, wedge: named(near.wedge) } : near }),
    ...(far && { far: far.wedge ? { ...far, wedge: named(far.wedge) } : far }),
    ...(guide && { guide: named(guide) }),
    ...(window && { window: named(window) }),
    depthBlock: nameOf(holding.depthBlock),
    supports: holding.supports.map(named),
  };
}
