import { readFile } from 'node:fs/promises';
import { packageFolder } from './package-folder.js';

/** The version in the package's own package.json. */
export async function version(): Promise<string> {
  const text = await readFile(new URL('package.json', packageFolder()), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}
