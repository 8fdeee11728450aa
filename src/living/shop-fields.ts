import type { Units } from '../length/index.js';
import type { ShopField } from '../shop/index.js';
import { make } from './elements.js';
import { markTyping } from './refilled.js';
import type { ShopWords } from './shop-words.js';
import { withUnit } from './with-unit.js';

/** A place of the shop file on the page. */
export interface ShopPlace {
  readonly root: HTMLElement;
  readonly words: () => ShopWords;
  /** Tells what is wrong at its place and below; `where` is its path in the file. */
  readonly refuse: (where: string, told: (path: string) => string) => void;
}

/** Names on the page are unique: rows come and go. */
let count = 0;

/**
 * @param units that a bare figure is meant in when it is handed in
 * @param changed called when anything of it was changed
 */
export function shopPlace(field: ShopField, units: () => Units, changed: () => void, row = ''): ShopPlace {
  if (field.kind === 'group') return groupOf(field, units, changed);
  if (field.kind === 'rows') return rowsOf(field, units, changed);
  return fieldOf(field, units, changed, row);
}

export const spoken = (name: string): string => name.replaceAll('-', ' ');

function fieldOf(
  field: ShopField & { readonly kind: 'value' | 'lines' },
  units: () => Units,
  changed: () => void,
  row: string,
): ShopPlace {
  count += 1;
  const { name, help, text } = field;
  const id = `shop-${count}`;
  const why = whyOf();
  why.id = `${id}-why`;
  const input = inputOf(field, id);
  input.value = text;
  if (!(input instanceof HTMLSelectElement)) markTyping(input);
  if (row) input.ariaLabel = `${row}, ${spoken(name)}`;
  input.setAttribute('aria-describedby', row ? why.id : `${why.id} ${id}-help`);
  input.addEventListener('change', () => {
    if (field.kind === 'value' && field.length)
      input.value = input.value
        .split(field.several ? ',' : '\n')
        .map((one) => withUnit(one.trim(), 'length', units()))
        .join(', ');
    changed();
  });
  const root = make(
    'div',
    { className: 'size' },
    make('label', { htmlFor: id, textContent: spoken(name) }),
    input,
    why,
    // in a row it is said once above all of them
    ...(row ? [] : [make('p', { className: 'soft', id: `${id}-help`, textContent: help })]),
  );
  root.dataset.shop = name;
  return {
    root,
    words: () =>
      field.kind === 'lines'
        ? { name, lines: input.value }
        : { name, text: input.value.trim(), several: field.several },
    refuse: (where, told) => {
      tell(why, told(where));
      if (why.hidden) input.removeAttribute('aria-invalid');
      else input.setAttribute('aria-invalid', 'true');
    },
  };
}

function inputOf(
  field: ShopField & { readonly kind: 'value' | 'lines' },
  id: string,
): HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement {
  if (field.kind === 'lines') return make('textarea', { id, rows: 3, spellcheck: false });
  if (field.choices.length === 0) return make('input', { type: 'text', id, spellcheck: false });
  const known = field.text === '' || field.choices.includes(field.text);
  const words = ['', ...field.choices, ...(known ? [] : [field.text])];
  return make(
    'select',
    { id },
    ...words.map((word) => make('option', { value: word, textContent: word || 'left out' })),
  );
}

function groupOf(
  field: ShopField & { readonly kind: 'group' },
  units: () => Units,
  changed: () => void,
): ShopPlace {
  const { name, help } = field;
  const places = field.fields.map((one) => shopPlace(one, units, changed));
  const why = whyOf();
  const root = make(
    'fieldset',
    {},
    make('legend', { textContent: spoken(name) }),
    make('p', { className: 'soft', textContent: help }),
    why,
    ...places.map(({ root: one }) => one),
  );
  return {
    root,
    words: () => ({ name, fields: places.map(({ words }) => words()) }),
    refuse: (where, told) => {
      tell(why, told(where));
      for (const place of places) place.refuse(`${where}.${place.words().name}`, told);
    },
  };
}

/** Rows of a list: they are added and left out, and what their fields mean is said once. */
function rowsOf(
  field: ShopField & { readonly kind: 'rows' },
  units: () => Units,
  changed: () => void,
): ShopPlace {
  const { name, help, blank } = field;
  const list = make('div', {});
  const why = whyOf();
  let rows: { readonly root: HTMLElement; readonly places: readonly ShopPlace[] }[] = [];
  const add = make('button', { type: 'button', className: 'add-row', textContent: `Add to ${spoken(name)}` });
  const added = (fields: readonly ShopField[]): HTMLElement => {
    const called = `${spoken(name)} ${rows.length + 1}`;
    const places = fields.map((one) => shopPlace(one, units, changed, called));
    const out = make('button', { type: 'button', className: 'leave-row', textContent: 'Leave out' });
    out.ariaLabel = `Leave out ${called}`;
    const root = make(
      'fieldset',
      { className: 'row' },
      make('legend', { textContent: called }),
      ...places.map(({ root: one }) => one),
      out,
    );
    out.addEventListener('click', () => {
      rows = rows.filter((one) => one.root !== root);
      root.remove();
      add.focus();
      changed();
    });
    rows.push({ root, places });
    list.append(root);
    return root;
  };
  for (const row of field.rows) added(row);
  add.addEventListener('click', () => added(blank).querySelector<HTMLElement>('input, select')!.focus());
  const means = blank.map((one) => `${spoken(one.name)}: ${one.help}`).join('\n');
  const root = make(
    'details',
    { className: 'paper rows' },
    make('summary', { textContent: spoken(name) }),
    make('p', { className: 'soft told', textContent: `${help}\n${means}` }),
    why,
    list,
    add,
  );
  return {
    root,
    words: () => ({ name, rows: rows.map(({ places }) => places.map(({ words }) => words())) }),
    refuse: (where, told) => {
      tell(why, told(where));
      rows.forEach(({ places }, i) => {
        for (const place of places) place.refuse(`${where}[${i}].${place.words().name}`, told);
      });
      if (root.querySelector('[aria-invalid]')) root.open = true;
    },
  };
}

const whyOf = (): HTMLElement => make('p', { className: 'why', hidden: true });

function tell(why: HTMLElement, text: string): void {
  why.hidden = text === '';
  why.textContent = text;
}
