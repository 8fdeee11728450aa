import type { LivingState } from '../files/index.js';
import { onPage } from '../viewer/index.js';
import { handOver } from './elements.js';

/** Where a browser keeps the shop, when the person wishes it. */
const KEPT = 'tenonwright shop';

/**
 * The person's shop, told as a shop file.
 *
 * @param usual the shop the page was made with, as a file
 * @param use works in a shop from now on; undefined: in that of the page
 */
export function wireShop(
  usual: string,
  use: (shop: LivingState['shop']) => void,
): { readonly show: (text: string) => void } {
  const [text, keep] = [onPage<HTMLTextAreaElement>('shop-text'), onPage<HTMLInputElement>('keep-shop')];
  const kept = keeping((store) => store.getItem(KEPT)) ?? undefined;
  text.value = kept ?? usual;
  keep.checked = kept !== undefined;
  const remember = (): void => {
    keeping((store) => (keep.checked ? store.setItem(KEPT, text.value) : store.removeItem(KEPT)));
  };
  const asFile = () => ({ name: 'shop.yaml', text: text.value });
  keep.addEventListener('change', remember);
  onPage('use-shop').addEventListener('click', () => {
    remember();
    use(asFile());
  });
  onPage('usual-shop').addEventListener('click', () => {
    text.value = usual;
    use(undefined);
  });
  onPage('save-shop').addEventListener('click', () => handOver('shop.yaml', text.value, 'text/yaml'));
  if (kept !== undefined) use(asFile());
  return {
    show: (told) => {
      text.value = told;
      onPage<HTMLDetailsElement>('shop-told').open = true;
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
