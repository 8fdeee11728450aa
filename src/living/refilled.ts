/** Marks a text field while it holds letters that were not handed in. */
export function markTyping(field: HTMLElement): void {
  field.addEventListener('input', () => {
    field.dataset.typing = 'yes';
  });
  field.addEventListener('change', () => delete field.dataset.typing);
}

/**
 * A form whose controls are told anew now and then. While letters are typed in it the new ones wait until they are handed in,
 * which brings newer ones, or left; the focus stays at its control, and letters that were all chosen stay chosen.
 */
export function refilled(form: HTMLElement): (fresh: () => readonly HTMLElement[]) => void {
  let held: (() => void) | undefined;
  const controls = () => [...form.querySelectorAll<HTMLElement>('input, select, textarea, button, summary')];
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
      const was = document.activeElement as HTMLElement;
      const at = controls().indexOf(was);
      const all = isAllChosen(was);
      form.replaceChildren(...fresh());
      const same = controls()[at];
      same?.focus();
      if (all && same instanceof HTMLInputElement) same.select();
    };
    fillUnlessTyping();
  };
}

/** As when the field was come to by Tab: what is typed takes the place of what stands there. */
const isAllChosen = (field: HTMLElement): boolean =>
  field instanceof HTMLInputElement &&
  field.selectionStart === 0 &&
  field.selectionEnd === field.value.length;
