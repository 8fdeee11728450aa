import type { Shop } from '../at-hand/index.js';
import type { Aid } from '../holding/index.js';
import type { SetupCard } from '../set-up/index.js';
import { settings } from './setup-settings.js';

/** What a card tells that another may tell as well. */
export interface Told {
  readonly settings: readonly (readonly string[])[];
  readonly doubtful: readonly (readonly string[])[];
  readonly cautions: readonly string[];
}

export const toldBy = (card: SetupCard, aids: readonly Aid[], shop: Shop): Told => ({
  settings: settings(card, aids, shop),
  doubtful: card.figures
    .filter(({ verdict }) => verdict === 'failed')
    .map(({ name, verdict, text }) => [name, verdict, text]),
  cautions: card.cautions,
});

const isAmong = <T>(one: T, all: readonly T[]): boolean =>
  all.some((other) => JSON.stringify(other) === JSON.stringify(one));

const inAll = <T>(lists: readonly (readonly T[])[]): readonly T[] =>
  (lists[0] ?? []).filter((one) => lists.every((list) => isAmong(one, list)));

const notIn = <T>(list: readonly T[], common: readonly T[]): readonly T[] =>
  list.filter((one) => !isAmong(one, common));

/** What every card says in the same words; a card alone keeps what it says. */
export const commonTo = (cards: readonly Told[]): Told => {
  const several = cards.length > 1 ? cards : [];
  return {
    settings: inAll(several.map(({ settings: rows }) => rows)),
    doubtful: inAll(several.map(({ doubtful }) => doubtful)),
    cautions: inAll(cards.map(({ cautions: said }) => said)),
  };
};

/** What a card tells besides what all of them share. */
export const without = (told: Told, common: Told): Told => ({
  settings: notIn(told.settings, common.settings),
  doubtful: notIn(told.doubtful, common.doubtful),
  cautions: notIn(told.cautions, common.cautions),
});
