import { sha256 as digest } from '@noble/hashes/sha2';
import { bytesToHex } from '@noble/hashes/utils';

/** A file of the output: its path below the folder, parts joined by `/`, and what is in it. */
export interface OutputFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** The list by which this tool knows its own files again: `sha256sum --check files.sha256` reads it too. */
export const LIST = 'files.sha256';

/** SHA-256 in hexadecimal. */
export const sha256 = (bytes: Uint8Array): string => bytesToHex(digest(bytes));
