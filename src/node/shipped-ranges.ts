import { existsSync, readFileSync } from 'node:fs';
import { packageFolder } from './package-folder.js';

/** The ranges.json that a shipped design states for itself, as it was written; undefined when it states none. */
export function shippedRangesText(name: string): string | undefined {
  const file = new URL(`shared/ranges/${name}.json`, packageFolder());
  return existsSync(file) ? readFileSync(file, 'utf8') : undefined;
}
