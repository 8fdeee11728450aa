import { speaker, type Units } from '../../length/index.js';
import type { MakeResult } from '../around/index.js';
import { columnsOf, type Surroundings } from '../around/index.js';
import { printChanges, printDesign, printFiles, printFindings, printHeldBack } from './print-result.js';

/** Prints what came of a run: the summary alone as JSON, only errors when quiet, else figures, findings and files. */
export function showResult(
  result: MakeResult,
  {
    json,
    quiet,
    units,
    listFiles = false,
  }: {
    readonly json: boolean;
    readonly quiet: boolean;
    readonly units: Units;
    readonly listFiles?: boolean;
  },
  { out, err, cwd, ...around }: Surroundings,
): void {
  const width = columnsOf({ out, err, cwd, ...around });
  const errors = result.findings.filter(({ level }) => level === 'error');
  if (json) {
    out.write(`${JSON.stringify(result.summary, null, 2)}\n`);
    return;
  }
  if (quiet) {
    if (errors.length > 0) err.write(printFindings(errors, width).trimStart());
    return;
  }
  out.write(printDesign(result.design, speaker(units), width));
  out.write(printFindings(result.findings, width));
  out.write(printChanges(result.changes, width));
  out.write(printHeldBack(result.heldBack, width));
  // last, for it says what to do next
  if (result.written) out.write(printFiles(result.files, cwd, width, listFiles));
}
