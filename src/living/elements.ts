/** A new element with its properties and what it holds. */
export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  properties: Partial<HTMLElementTagNameMap[K]> = {},
  ...inside: readonly (Node | string)[]
): HTMLElementTagNameMap[K] {
  const one = Object.assign(document.createElement(tag), properties);
  one.append(...inside);
  return one;
}

/** Marks a text field while it holds letters that were not handed in. */
export function markTyping(field: HTMLElement): void {
  field.addEventListener('input', () => {
    field.dataset.typing = 'yes';
  });
  field.addEventListener('change', () => delete field.dataset.typing);
}

/**
 * A form whose controls are told anew now and then. While letters are typed in it the new ones wait until they are handed in,
 * which brings newer ones, or left; the focus stays at its control.
 */
export function refilled(form: HTMLElement): (fresh: () => readonly HTMLElement[]) => void {
  let held: (() => void) | undefined;
  const controls = () => [...form.querySelectorAll<HTMLElement>('input, select, textarea, button')];
  const fillUnlessTyping = (): void => {
    if (form.querySelector('[data-typing]:focus')) return;
    held?.();
    held = undefined;
  };
  form.addEventListener('change', () => {
    held = undefined;
  });
  // the focus has come to its next control by then
  form.addEventListener('focusout', () => setTimeout(fillUnlessTyping));
  return (fresh) => {
    held = () => {
      const at = controls().indexOf(document.activeElement as HTMLElement);
      form.replaceChildren(...fresh());
      controls()[at]?.focus();
    };
    fillUnlessTyping();
  };
}

/** Hands bytes to the person as a file. */
export function handOver(name: string, bytes: Uint8Array | string, type = 'application/octet-stream'): void {
  const content = typeof bytes === 'string' ? bytes : new Uint8Array(bytes);
  const href = URL.createObjectURL(new Blob([content], { type }));
  make('a', { href, download: name }).click();
  // the browser has taken hold of it by then
  setTimeout(() => URL.revokeObjectURL(href), 60_000);
}
