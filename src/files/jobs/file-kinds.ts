import { InputError } from '../../errors.js';

/** Kinds of file that are written when nothing is said. */
export const USUAL_KINDS = ['stl', 'dxf', 'shop', 'plan', 'faces', '3mf', 'glb', 'pictures', 'page'] as const;

/** Kinds of file that can be asked for with `--only`; `summary.json` is always written. The living plan holds the whole program. */
export const FILE_KINDS = [...USUAL_KINDS, 'living'] as const;

export type FileKind = (typeof FILE_KINDS)[number];

/**
 * The kinds asked for; the usual ones when nothing is said.
 *
 * @throws InputError for a word that is no kind of file
 */
export function fileKinds(only: readonly string[] | undefined): ReadonlySet<FileKind> {
  if (only === undefined) return new Set(USUAL_KINDS);
  const known: readonly string[] = FILE_KINDS;
  const unknown = only.find((word) => !known.includes(word));
  if (unknown !== undefined) {
    throw new InputError(
      'only-unknown',
      `--only names '${unknown}', which is not a kind of file: choose from ${known.join(', ')}`,
    );
  }
  return new Set(only as readonly FileKind[]);
}
