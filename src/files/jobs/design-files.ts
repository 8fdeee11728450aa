import type { Paper } from '../../drawing/index.js';
import type { OutputFile } from '../folder/index.js';
import { type DesignRequest, type Made, STEPS, type Supplies } from '../made/index.js';
import type { FileKind } from './file-kinds.js';
import { KIND_WRITERS } from './kind-writers.js';

/** The files of a design, and which were held back because a check failed. */
export interface DesignFiles {
  readonly files: readonly OutputFile[];
  readonly heldBack: readonly string[];
}

/** Every file of the kinds asked for; cutting files of a design that failed a check are only named, unless they are forced. */
export async function designFiles(
  made: Made,
  kinds: ReadonlySet<FileKind>,
  supplies: Supplies,
): Promise<DesignFiles> {
  const files: OutputFile[] = [];
  const heldBack: string[] = [];
  for (const kind of kinds) {
    const { cutting, write } = KIND_WRITERS[kind];
    if (cutting.length > 0 && made.failed && !made.request.force) {
      heldBack.push(...cutting);
      continue;
    }
    made.request.progress(`${STEPS[3]}: ${kind}`, 3, STEPS.length);
    files.push(...(await write(made, supplies)));
  }
  return { files, heldBack };
}

/** The plan on one paper, as `designFiles` makes it. */
export async function onePlan(made: Made, paper: Paper, { planFonts }: Supplies): Promise<OutputFile> {
  const [{ planOf }, { planPdf }, fonts] = await Promise.all([
    import('../plan/plan-files.js'),
    import('../plan/plan-pdf.js'),
    planFonts(),
  ]);
  return planPdf(planOf(made), paper, fonts);
}

/**
 * Refuses options of the plan that cannot be used, before anything is worked out.
 *
 * @throws InputError naming the option
 */
export async function requirePlanOptions(request: DesignRequest): Promise<void> {
  if (request.printScale !== undefined) (await import('../plan/plan-files.js')).planOptions(request);
}
