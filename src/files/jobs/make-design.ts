import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { volume } from '../../solid/index.js';
import { type OutputFile, requireOutFolder, sha256, writeFolder } from '../folder/index.js';
import { type DesignRequest, type DesignResult, type Made, STEPS, withMade } from '../made/index.js';
import {
  changeLines,
  changesSince,
  json,
  type Summary,
  summaryOf,
  type WrittenFile,
} from '../summary/index.js';
import { type FileKind, fileKinds } from './file-kinds.js';
import { KIND_WRITERS } from './kind-writers.js';

/**
 * Makes a design whole: solids, checks, papers, files.
 *
 * @throws TenonwrightError for input that cannot be used; nothing is written then
 */
export async function makeDesign(request: DesignRequest): Promise<DesignResult> {
  const kinds = fileKinds(request.only);
  // refused before anything is worked out
  requireOutFolder(request.out, request.model.name);
  if (request.printScale !== undefined) (await import('../plan/plan-files.js')).planOptions(request);
  return withMade(request, async (made) => {
    const { design } = made.solids;
    const { files, heldBack } = await filesOf(made, kinds);
    request.progress(STEPS[3], 3, STEPS.length);
    const text = report(made, files, kinds.has('shop'));
    const summary = JSON.parse(text) as Summary;
    const whole = [...files, { path: 'summary.json', bytes: new TextEncoder().encode(text) }];
    const before = lastSummary(join(request.out, design.name));
    const folder = writeFolder(request.out, design.name, whole);
    request.progress('done', STEPS.length, STEPS.length);
    return {
      design,
      findings: made.findings,
      files: whole.map((file) => ({ ...listed(file), path: join(folder, file.path) })),
      summary,
      written: true,
      heldBack,
      changes: changeLines(changesSince(before, summary), made.say),
    };
  });
}

/** The same without writing anything. */
export const checkDesign = (request: DesignRequest): Promise<DesignResult> =>
  withMade(request, async (made) => {
    request.progress('done', STEPS.length, STEPS.length);
    return {
      design: made.solids.design,
      findings: made.findings,
      files: [],
      summary: JSON.parse(report(made, [], true)) as Summary,
      written: false,
      heldBack: [],
      changes: [],
    };
  });

/** Every file asked for; cutting files of a design that failed are only named. */
async function filesOf(
  made: Made,
  kinds: ReadonlySet<FileKind>,
): Promise<{ files: readonly OutputFile[]; heldBack: readonly string[] }> {
  const files: OutputFile[] = [];
  const heldBack: string[] = [];
  for (const kind of kinds) {
    const { cutting, write } = KIND_WRITERS[kind];
    if (cutting.length > 0 && made.failed && !made.request.force) {
      heldBack.push(...cutting);
      continue;
    }
    made.request.progress(`${STEPS[3]}: ${kind}`, 3, STEPS.length);
    files.push(...(await write(made)));
  }
  return { files, heldBack };
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

/** The text of `summary.json`: what is told is what is written, to the last digit. */
function report(made: Made, files: readonly OutputFile[], withPapers: boolean): string {
  const { request, solids } = made;
  const written = new Set(files.map(({ path }) => path));
  const own = (path: string): string | undefined => (written.has(path) ? path : undefined);
  const filesOfBoard = (id: string, below: string) => {
    const solid = own(`stl/${below}${id}.mm.stl`);
    const template = own(`templates/${below}${id}.${request.units}.dxf`);
    return { ...(solid && { solid }), ...(template && { template }) };
  };
  const summary = summaryOf({
    design: solids.design,
    version: request.version,
    parameters: made.parameters,
    volumes: new Map([...solids.boards.values()].map(({ id, own: body }) => [id, volume(body)])),
    tenons: made.bench.tenons,
    findings: made.findings,
    files: files.map(listed),
    boardFiles: new Map([...solids.boards.keys()].map((id) => [id, filesOfBoard(id, '')])),
    revision: made.revision,
    papers: withPapers ? made.papers : undefined,
    aidFiles: new Map(made.aids.map(({ board }) => [board.id, filesOfBoard(board.id, 'aids/')])),
  });
  return json(summary);
}

const listed = (file: OutputFile): WrittenFile => ({
  path: file.path,
  bytes: file.bytes.length,
  sha256: sha256(file.bytes),
});
