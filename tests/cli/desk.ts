import { fileURLToPath } from 'node:url';
import type { Finding } from '../../src/checks/index.js';
import { type MakeRequest, type MakeResult, run, type Surroundings } from '../../src/cli/index.js';

/** What a run printed and returned, and what it asked of the pipeline. */
export interface Ran {
  readonly status: number;
  readonly out: string;
  readonly err: string;
  readonly asked: readonly (readonly ['make' | 'check', MakeRequest])[];
}

export const finding = (level: Finding['level']): Finding => ({
  code: ({ error: 'tenon-bottoms-out', warning: 'wall-thin', note: 'joint-sprung' } as const)[level],
  level,
  subjects: ['rail'],
  measured: 62,
  limit: 57.5,
  unit: 'mm',
  message: 'tenon of joint rail/left-side is 62.0 mm long, its two mortises are 57.5 mm deep together',
  remedy: 'shorten it by 4.5 mm or deepen a mortise',
  basis: 'common practice, no source',
});

/** Runs the command line with models of the tests and a pipeline that builds the design and records what it was asked. */
export async function atDesk(
  argv: readonly string[],
  given: Partial<Surroundings> & {
    readonly findings?: readonly Finding[];
    readonly changes?: readonly string[];
    /** Paths within the design's folder. */
    readonly files?: readonly string[];
    readonly fault?: Error;
  } = {},
): Promise<Ran> {
  const { findings = [], changes = [], files = ['rail.stl'], fault, ...around } = given;
  const asked: ['make' | 'check', MakeRequest][] = [];
  let out = '';
  let err = '';
  const answer = async (which: 'make' | 'check', request: MakeRequest): Promise<MakeResult> => {
    asked.push([which, request]);
    request.progress('build the design', 1, 2);
    if (fault) throw fault;
    request.progress('write the files', 2, 2);
    const failed = findings.some(({ level }) => level === 'error') && !request.force;
    return {
      design: request.model.build(request.values),
      findings,
      files:
        which === 'check'
          ? []
          : files.map((name) => ({
              path: `${request.out}/small/${name}`,
              bytes: 12_345,
              sha256: '0'.repeat(64),
            })),
      summary: { design: request.model.name, values: request.values } as unknown as MakeResult['summary'],
      written: which === 'make',
      heldBack: which === 'make' && failed ? ['left-side.mm.dxf'] : [],
      changes,
    };
  };
  const status = await run(argv, {
    out: { write: (text) => (out += text) },
    err: { write: (text) => (err += text) },
    isTerminal: false,
    cwd: fileURLToPath(new URL('./', import.meta.url)),
    modelsFolder: fileURLToPath(new URL('./models', import.meta.url)),
    pipeline: {
      makeDesign: (request) => answer('make', request),
      checkDesign: (request) => answer('check', request),
    },
    ...around,
  });
  return { status, out, err, asked };
}
