import type { Misplaced } from '../errors.js';
import type { LivingDesign, SizeRow } from '../files/index.js';
import type { Units } from '../length/index.js';
import { printValue } from '../model/index.js';
import { make } from './elements.js';
import type { RedSpan } from './messages.js';
import { provedOf } from './proved.js';
import { markTyping, refilled } from './refilled.js';
import { withUnit } from './with-unit.js';

/** The sizes of a design as controls. */
export interface SizeControls {
  /** Shows where every size stands; controls of another design take the place of those there are. */
  readonly show: (form: readonly SizeRow[], units: Units, design: LivingDesign | undefined) => void;
  /** Tells at each size what is wrong with it. */
  readonly refuse: (places: readonly Misplaced[]) => void;
  readonly redden: (option: string, spans: readonly RedSpan[]) => void;
}

/** What the person does: while a slider is dragged, and when a size is given; undefined lets it follow again. */
export interface Given {
  readonly touch: (option: string, text: string) => void;
  readonly give: (option: string, text: string | undefined) => void;
  /** What a bare figure is meant in. */
  readonly units: () => Units;
}

/** One size on the page. */
interface Control {
  readonly root: HTMLElement;
  readonly show: (row: SizeRow, units: Units) => void;
  readonly refuse: (text: string | undefined) => void;
  readonly redden: (spans: readonly RedSpan[]) => void;
}

export function sizeControls(form: HTMLElement, given: Given): SizeControls {
  let controls = new Map<string, Control>();
  let key = '';
  const refill = refilled(form);
  form.addEventListener('submit', (event) => event.preventDefault());
  return {
    show: (rows, units, design) => {
      // one that ranges otherwise, or is told otherwise, is another control
      const fresh = JSON.stringify([
        design?.name,
        units,
        rows.map(({ option, label, kind, range, choices, help }) => [
          option,
          label,
          kind,
          range,
          choices,
          help,
        ]),
      ]);
      const tell = (): void => {
        for (const row of rows) controls.get(row.option)!.show(row, units);
      };
      if (fresh === key) return tell();
      refill(() => {
        key = fresh;
        controls = new Map(rows.map((row) => [row.option, controlOf(row, units, design, given)]));
        tell();
        return [...controls.values()].map(({ root }) => root);
      });
    },
    refuse: (places) => {
      for (const [option, { refuse }] of controls)
        refuse(places.find(({ of, name }) => of === 'size' && name === option)?.text);
    },
    redden: (option, spans) => controls.get(option)?.redden(spans),
  };
}

function controlOf(row: SizeRow, units: Units, design: LivingDesign | undefined, given: Given): Control {
  const { option } = row;
  const [field, slider] = [fieldOf(row), sliderOf(row)];
  const why = make('p', { className: 'why', id: `why-${option}`, hidden: true });
  const free = make('button', { type: 'button', className: 'free', hidden: true });
  const proved = row.slide && provedOf(row, design?.ranges, units);
  const red = make('span');
  const band = make('div', { className: 'band' }, red);
  band.ariaHidden = 'true';
  const help = make('p', { className: 'soft', id: `help-${option}` });
  const more = make('p', { className: 'more', id: `more-${option}` });
  if (row.slide && proved) for (const span of proved.spans) band.append(mark('proved', span, row.slide));
  const pair = slider
    ? make('div', { className: 'pair' }, make('div', { className: 'slide' }, slider, band), field)
    : field;
  const root = make(
    'div',
    { className: 'size' },
    make('label', { htmlFor: field.id, textContent: row.label }),
    pair,
    why,
    help,
    more,
    free,
  );
  root.dataset.option = option;
  for (const one of [field, slider]) one?.setAttribute('aria-describedby', `${why.id} ${help.id} ${more.id}`);

  let now = row;
  let spans: readonly RedSpan[] = [];
  const snapped = (): string => {
    const { step, least, most } = now.slide!;
    const near = Math.round(Number(slider!.value) / step) * step;
    const value = Number(Math.min(most, Math.max(least, near)).toFixed(9));
    return printValue({ kind: now.kind }, value, units);
  };
  slider?.addEventListener('input', () => {
    field.value = snapped();
    slider.ariaValueText = field.value;
    given.touch(option, snapped());
  });
  slider?.addEventListener('change', () => given.give(option, snapped()));
  field.addEventListener('change', () => {
    const text = field.value.trim();
    given.give(option, text === '' ? undefined : withUnit(text, now.kind, given.units()));
  });
  free.addEventListener('click', () => given.give(option, undefined));

  const tell = (): void => {
    const { slide } = now;
    red.replaceChildren(...(slide ? spans.map((span) => mark('red', span, slide)) : []));
    const words = [...new Set(spans.map(({ why: text }) => text))].join('; ');
    // a list to choose from says itself what there is
    help.textContent = slide ? `${now.help} ${sentence(now.range)}` : now.help;
    more.textContent = [
      now.follows && !now.given ? `Follows by itself: ${now.follows}.` : '',
      proved?.words ?? '',
      words && `Red, by a quick look while the others stay: ${words}`,
    ]
      .filter((part) => part !== '')
      .join('\n');
  };
  return {
    root,
    show: (to) => {
      // where it is red hangs on all the other sizes
      now = to;
      root.toggleAttribute('data-follows', to.follows !== '' && !to.given);
      // what is being typed is left alone
      if (document.activeElement !== field || field instanceof HTMLSelectElement || !isTyping(field, to))
        field.value = field instanceof HTMLSelectElement && to.follows && !to.given ? '' : to.text;
      if (field instanceof HTMLInputElement) field.placeholder = to.follows && !to.given ? 'by itself' : '';
      if (slider && to.slide) {
        const { least, most, value } = to.slide;
        slider.value = String(value ?? (least + most) / 2);
        slider.ariaValueText = to.text || `follows: ${to.follows}`;
      }
      free.hidden = !to.given;
      free.textContent = to.follows ? 'let it follow again' : `back to ${to.default}`;
      free.setAttribute('aria-label', `${to.label}: ${free.textContent}`);
      tell();
    },
    refuse: (text) => {
      why.hidden = text === undefined;
      why.textContent = text ?? '';
      if (text === undefined) field.removeAttribute('aria-invalid');
      else field.setAttribute('aria-invalid', 'true');
    },
    redden: (found) => {
      spans = found;
      tell();
    },
  };
}

const sentence = (words: string): string =>
  words === '' ? '' : `${words[0]!.toUpperCase()}${words.slice(1)}.`;

/** Text that was not handed in yet. */
const isTyping = (field: HTMLInputElement | HTMLSelectElement, { text }: SizeRow): boolean =>
  field.value !== text && field.dataset.typing === 'yes';

/** A text field, or a list to choose from. */
function fieldOf({ option, kind, choices, follows }: SizeRow): HTMLInputElement | HTMLSelectElement {
  const words = kind === 'flag' ? ['true', 'false'] : choices;
  const id = `size-${option}`;
  if (words.length === 0) {
    const field = make('input', { type: 'text', id, spellcheck: false });
    markTyping(field);
    return field;
  }
  const said = (word: string): string => (kind === 'flag' ? (word === 'true' ? 'yes' : 'no') : word);
  return make(
    'select',
    { id },
    ...(follows ? [make('option', { value: '', textContent: `follows: ${follows}` })] : []),
    ...words.map((word) => make('option', { value: word, textContent: said(word) })),
  );
}

function sliderOf({ option, label, slide }: SizeRow): HTMLInputElement | undefined {
  if (!slide) return undefined;
  const { least, most, step } = slide;
  const slider = make('input', {
    type: 'range',
    id: `slide-${option}`,
    min: String(least),
    max: String(most),
    step: String(step),
    ariaLabel: `${label}, slider`,
  });
  return slider;
}

const mark = (
  className: 'proved' | 'red',
  { from, to }: { readonly from: number; readonly to: number },
  { least, most }: NonNullable<SizeRow['slide']>,
): HTMLElement => {
  const one = make('i', { className });
  const share = (value: number): number => (100 * (value - least)) / (most - least);
  one.style.left = `${share(from).toFixed(2)}%`;
  one.style.width = `${Math.max(0.8, share(to) - share(from)).toFixed(2)}%`;
  return one;
};
