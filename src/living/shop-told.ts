import type { Misplaced } from '../errors.js';
import type { LivingState } from '../files/index.js';
import type { ShopField } from '../shop/index.js';
import { onPage } from '../viewer/index.js';
import { handOver } from './elements.js';
import { refilled } from './refilled.js';
import { type ShopPlace, shopPlace } from './shop-fields.js';
import { shopYaml } from './shop-words.js';

/** Where a browser keeps the shop, when the person wishes it. */
const KEPT = 'tenonwright shop';

/** The person's shop as a form. */
export interface ShopTold {
  /** Shows the shop of a state; a form of another is asked for. */
  readonly show: (state: LivingState) => void;
  /** Shows the form, unless another was asked for since. */
  readonly hear: (number: number, fields: readonly ShopField[]) => void;
  /** Tells at each place what is wrong with it. */
  readonly refuse: (places: readonly Misplaced[]) => void;
  readonly open: () => void;
}

/**
 * @param use works in a shop from now on; undefined: in that of the page
 * @param ask for the form of a state's shop; by what number it will be answered
 */
export function wireShop(
  use: (shop: LivingState['shop']) => void,
  ask: (state: LivingState) => number | undefined,
): ShopTold {
  const [told, form, keep] = [
    onPage<HTMLDetailsElement>('shop-told'),
    onPage('shop-form'),
    onPage<HTMLInputElement>('keep-shop'),
  ];
  const kept = keeping((store) => store.getItem(KEPT)) ?? undefined;
  keep.checked = kept !== undefined;
  let places: readonly ShopPlace[] = [];
  let refused: readonly Misplaced[] = [];
  let now: LivingState | undefined;
  /** What the form was made of. */
  let shown = '';
  let awaited: number | undefined;
  const keyOf = ({ shop, units }: LivingState): string => JSON.stringify([shop?.text, units]);
  const written = () => ({ name: 'shop.yaml', text: shopYaml(places.map(({ words }) => words())) });
  const remember = (text: string | undefined): void => {
    keeping((store) =>
      keep.checked && text !== undefined ? store.setItem(KEPT, text) : store.removeItem(KEPT),
    );
  };
  const catchUp = (): void => {
    if (!told.open || !now || keyOf(now) === shown) return;
    shown = keyOf(now);
    awaited = ask(now);
  };
  const refuse = (told: readonly Misplaced[]): void => {
    refused = told;
    /** One of several values is told at the field that holds them all. */
    const at = (path: string): string =>
      told
        .filter(({ of, name }) => of === 'shop' && name.replace(/\[\d+\]$/, '') === path)
        .map(({ text }) => text)
        .join('\n');
    for (const place of places) place.refuse(place.words().name, at);
  };
  const refill = refilled(form);
  told.addEventListener('toggle', catchUp);
  form.addEventListener('submit', (event) => event.preventDefault());
  keep.addEventListener('change', () => remember(places.length > 0 ? written().text : now?.shop?.text));
  onPage('usual-shop').addEventListener('click', () => {
    remember(undefined);
    use(undefined);
  });
  onPage('save-shop').addEventListener('click', () => handOver('shop.yaml', written().text, 'text/yaml'));
  if (kept !== undefined) use({ name: 'shop.yaml', text: kept });
  return {
    show: (state) => {
      now = state;
      catchUp();
    },
    hear: (number, fields) => {
      if (number !== awaited) return;
      const changed = (): void => {
        const shop = written();
        remember(shop.text);
        // a form that is still to come does not know of it: it is asked for anew
        shown = now && awaited === undefined ? keyOf({ ...now, shop }) : '';
        use(shop);
      };
      refill(() => {
        awaited = undefined;
        places = fields.map((field) => shopPlace(field, () => now!.units, changed));
        refuse(refused);
        return places.map(({ root }) => root);
      });
    },
    refuse,
    open: () => {
      told.open = true;
    },
  };
}

/** A browser may keep nothing of a page, and says so only when it is asked. */
function keeping<T>(act: (store: Storage) => T): T | undefined {
  try {
    return act(window.localStorage);
  } catch {
    return undefined;
  }
}
