import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  changeLines,
  changesSince,
  type DesignRequest,
  type DesignResult,
  designFiles,
  fileKinds,
  type OutputFile,
  requirePlanOptions,
  STEPS,
  type Summary,
  summaryText,
  type WrittenFile,
  withMade,
} from '../files/index.js';
import { curingRefusal } from './curing-refusal.js';
import { requireOutFolder, writeFolder } from './output-folder.js';
import { sha256 } from './owned-files.js';
import { SUPPLIES } from './supplies.js';

/** A design to be made and written. */
export interface MakeRequest extends DesignRequest {
  /** Absolute path of the folder the design's own folder is written in. */
  readonly out: string;
}

/**
 * Makes a design whole: solids, checks, papers, files.
 *
 * @throws TenonwrightError for input that cannot be used; nothing is written then
 */
export async function makeDesign(request: MakeRequest): Promise<DesignResult> {
  const kinds = fileKinds(request.only);
  // refused before anything is worked out
  requireOutFolder(request.out, request.model.name);
  await requirePlanOptions(request);
  return curingRefusal(request, () =>
    withMade(request, async (made) => {
      const { design } = made.solids;
      const { files, heldBack } = await designFiles(made, kinds, SUPPLIES);
      request.progress(STEPS[3], 3, STEPS.length);
      const rows = files.map(listed);
      const text = summaryText(made, rows, kinds.has('shop'));
      const summary = JSON.parse(text) as Summary;
      const told = { path: 'summary.json', bytes: new TextEncoder().encode(text) };
      const before = lastSummary(join(request.out, design.name));
      const folder = writeFolder(request.out, design.name, [...files, told]);
      request.progress('done', STEPS.length, STEPS.length);
      return {
        design,
        findings: made.findings,
        files: [...rows, listed(told)].map((row) => ({ ...row, path: join(folder, row.path) })),
        summary,
        written: true,
        heldBack,
        changes: changeLines(changesSince(before, summary), made.say),
      };
    }),
  );
}

/** What the folder's last run told of itself; undefined when there was none, or it cannot be read. */
function lastSummary(folder: string): unknown {
  const path = join(folder, 'summary.json');
  if (!existsSync(path)) return undefined;
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return undefined;
  }
}

const listed = ({ path, bytes }: OutputFile): WrittenFile => ({
  path,
  bytes: bytes.length,
  sha256: sha256(bytes),
});
