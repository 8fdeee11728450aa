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

/** Hands bytes to the person as a file. */
export function handOver(name: string, bytes: Uint8Array | string, type = 'application/octet-stream'): void {
  const content = typeof bytes === 'string' ? bytes : new Uint8Array(bytes);
  const href = URL.createObjectURL(new Blob([content], { type }));
  make('a', { href, download: name }).click();
  // the browser has taken hold of it by then
  setTimeout(() => URL.revokeObjectURL(href), 60_000);
}
