import { join } from 'node:path';
import type { Design } from '../assembly/index.js';
import { benchOf, type Finding, failed, runChecks } from '../checks/index.js';
import { speaker, type Units } from '../length/index.js';
import { type Model, parameterValues } from '../model/index.js';
import { gate, type Solids, solidsOf, startKernel, volume } from '../solid/index.js';
import { type FileKind, fileKinds } from './file-kinds.js';
import { json } from './json.js';
import { writeFolder } from './output-folder.js';
import { type OutputFile, sha256 } from './owned-files.js';
import { type Summary, summaryOf, type WrittenFile } from './summary.js';

/** A design to be made; lengths mm. */
export interface DesignRequest {
  readonly model: Model;
  readonly values: Readonly<Record<string, unknown>>;
  readonly units: Units;
  /** Absolute path of the folder the design's own folder is written in. */
  readonly out: string;
  readonly only?: readonly string[];
  readonly format: 'binary' | 'ascii';
  readonly curves: 'arcs' | 'segments';
  readonly bush?: number;
  /** Write cutting files even when a check failed. */
  readonly force: boolean;
  readonly version: string;
  readonly progress: (step: string, done: number, total: number) => void;
}

/** What became of it. */
export interface DesignResult {
  readonly design: Design;
  readonly findings: readonly Finding[];
  /** Absolute paths. */
  readonly files: readonly WrittenFile[];
  readonly summary: Summary;
  readonly written: boolean;
  /** Cutting files not written because a check failed. */
  readonly heldBack: readonly string[];
}

/** Steps told to the person, in their order. */
const STEPS = [
  'reading the sizes',
  'making the solids',
  'measuring and checking',
  'writing the files',
] as const;

/**
 * Makes a design whole: solids, checks, files.
 *
 * @throws TenonwrightError for input that cannot be used; nothing is written then
 */
export async function makeDesign(request: DesignRequest): Promise<DesignResult> {
  const kinds = fileKinds(request.only);
  return withSolids(request, async (solids, checked) => {
    request.progress(STEPS[3], 3, STEPS.length);
    const cutting = !failed(checked.findings) || request.force;
    const templates = kinds.has('dxf') ? await templateFiles(request, solids, failed(checked.findings)) : [];
    const files = [...(await geometryFiles(request, solids, kinds)), ...(cutting ? templates : [])];
    const summary = report(request, solids, checked, files);
    const whole = [...files, { path: 'summary.json', bytes: new TextEncoder().encode(json(summary)) }];
    const folder = writeFolder(request.out, solids.design.name, whole);
    return {
      design: solids.design,
      findings: checked.findings,
      files: whole.map((file) => ({ ...listed(file), path: join(folder, file.path) })),
      summary,
      written: true,
      heldBack: cutting ? [] : templates.map((file) => file.path),
    };
  });
}

/** The same without writing anything. */
export const checkDesign = (request: DesignRequest): Promise<DesignResult> =>
  withSolids(request, async (solids, checked) => ({
    design: solids.design,
    findings: checked.findings,
    files: [],
    summary: report(request, solids, checked, []),
    written: false,
    heldBack: [],
  }));

interface Checked {
  readonly findings: readonly Finding[];
  readonly tenons: ReturnType<typeof benchOf>['tenons'];
}

/** Builds and checks, hands the solids on, and frees them whatever happens. */
async function withSolids(
  request: DesignRequest,
  use: (solids: Solids, checked: Checked) => Promise<DesignResult>,
): Promise<DesignResult> {
  const { progress } = request;
  progress(STEPS[0], 0, STEPS.length);
  // the kernel loads while the design is laid out
  const starting = startKernel();
  const design = request.model.build(request.values);
  const kernel = await starting;
  try {
    progress(STEPS[1], 1, STEPS.length);
    const solids = solidsOf(kernel, design);
    gate(solids);
    progress(STEPS[2], 2, STEPS.length);
    const bench = benchOf(solids, speaker(request.units), request.bush);
    const findings = runChecks(bench, (name) => progress(`${STEPS[2]}: ${name}`, 2, STEPS.length));
    const result = await use(solids, { findings, tenons: bench.tenons });
    progress('done', STEPS.length, STEPS.length);
    return result;
  } finally {
    kernel.dispose();
  }
}

async function geometryFiles(
  request: DesignRequest,
  solids: Solids,
  kinds: ReadonlySet<FileKind>,
): Promise<readonly OutputFile[]> {
  const files: OutputFile[] = [];
  if (kinds.has('stl')) {
    const { stlFiles } = await import('./solid-files.js');
    files.push(...stlFiles(solids, request.format));
  }
  if (kinds.has('faces')) {
    const [{ meshDxf }, { placedMeshes }] = await Promise.all([
      import('./mesh-dxf.js'),
      import('./solid-files.js'),
    ]);
    const pieces = placedMeshes(solids).map(({ id, mesh }) => ({ name: id.replaceAll('/', '-'), mesh }));
    files.push({ path: 'faces/assembly.mm.dxf', bytes: meshDxf(pieces) });
  }
  return files;
}

async function templateFiles(
  request: DesignRequest,
  solids: Solids,
  marked: boolean,
): Promise<readonly OutputFile[]> {
  const [{ templateOf }, { templateDxf, templateFileName }] = await Promise.all([
    import('../drawing/index.js'),
    import('./template-dxf.js'),
  ]);
  const { units, curves, bush } = request;
  return solids.design.boards.map(({ board }) => {
    const template = templateOf(board, {
      units,
      cutter: solids.design.cutter,
      ...(bush === undefined ? {} : { bush }),
    });
    return {
      path: `templates/${templateFileName(template, units)}`,
      bytes: templateDxf(template, { units, curves, failed: marked }),
    };
  });
}

function report(
  request: DesignRequest,
  solids: Solids,
  checked: Checked,
  files: readonly OutputFile[],
): Summary {
  const boardFiles = [...solids.boards.keys()].map((id) => {
    const solid = files.find((file) => file.path === `stl/${id}.mm.stl`)?.path;
    const template = files.find((file) => file.path === `templates/${id}.${request.units}.dxf`)?.path;
    return [id, { ...(solid && { solid }), ...(template && { template }) }] as const;
  });
  const summary = summaryOf({
    design: solids.design,
    version: request.version,
    parameters: parameterValues(request.model, request.values),
    volumes: new Map([...solids.boards.values()].map(({ id, own }) => [id, volume(own)])),
    tenons: checked.tenons,
    findings: checked.findings,
    files: files.map(listed),
    boardFiles: new Map(boardFiles),
  });
  // what is told is what is written, to the last digit
  return JSON.parse(json(summary)) as Summary;
}

const listed = (file: OutputFile): WrittenFile => ({
  path: file.path,
  bytes: file.bytes.length,
  sha256: sha256(file.bytes),
});
