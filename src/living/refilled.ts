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
