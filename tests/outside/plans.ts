import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll } from 'vitest';
import jig from '../../models/jig.js';
import type { Design } from '../../src/assembly/index.js';
import {
  type Paper,
  type PlanSet,
  type PrintScale,
  planSheets,
  type TiledTemplate,
} from '../../src/drawing/index.js';
import { type Started, startDesign } from '../../src/files/made/made.js';
import { planFiles, planOf } from '../../src/files/plan/plan-files.js';
import { planPdf } from '../../src/files/plan/plan-pdf.js';
import { readParameters } from '../../src/model/index.js';
import { SUPPLIES } from '../../src/node/index.js';
import { once as workedOutOnce } from '../../src/once.js';
import { builtInShop, type ShopPapers } from '../../src/shop/index.js';
import type { Case } from './designs.js';

/** A plan as files, and the data it was set from. */
export interface MadePlan {
  readonly design: Design;
  readonly papers: ShopPapers;
  readonly templates: readonly TiledTemplate[];
  readonly sets: Readonly<Record<Paper, PlanSet>>;
  /** Absolute path of a file by its name: `plan.a4.pdf`. */
  readonly file: (name: string) => string;
  readonly bytes: ReadonlyMap<string, Uint8Array>;
}

type Units = 'mm' | 'in' | 'dual';

/**
 * Makes plans into a folder that is deleted after the file's tests; each once, and what all plans of a design say once.
 *
 * In mm on both papers they are all files of a plan; else the plans on their papers alone, in both units or for a printer that is
 * off the one on A4: no more is read.
 */
export function planWorkshop(
  papersOf: (of: Case, units: 'mm' | 'in') => readonly Paper[],
): (of: Case, printScale?: PrintScale, units?: Units) => Promise<MadePlan> {
  const out = mkdtempSync(path.join(tmpdir(), 'tenonwright-plan-'));
  const started = new Map<string, Promise<Started>>();
  const made = new Map<string, Promise<MadePlan>>();
  afterAll(async () => {
    for (const one of started.values()) (await one).dispose();
    rmSync(out, { recursive: true, force: true });
  });
  const once = <T>(known: Map<string, Promise<T>>, key: string, work: () => Promise<T>): Promise<T> => {
    const found = known.get(key) ?? work();
    known.set(key, found);
    return found;
  };
  return (of, printScale, units = 'mm') => {
    const stem = path.join(out, String(made.size));
    return once(made, JSON.stringify([of.called, printScale, units]), async () => {
      const all = await once(started, `${of.called} ${units === 'in'}`, () => start(of, units));
      const papers = units === 'dual' || printScale ? (['A4'] as const) : papersOf(of, units);
      return planned(all, { papers, units, ...(printScale && { printScale }) }, stem);
    });
  };
}

/** A plan made anew, from the sizes on. */
export async function madeAnew(of: Case, stem: string): Promise<MadePlan> {
  const all = await start(of, 'mm');
  try {
    return await planned(all, { papers: ['A4', 'Letter'], units: 'mm' }, stem);
  } finally {
    all.dispose();
  }
}

/** In inches a design has the sizes of who works in inches, round there. */
function start({ model, values }: Case, plans: Units): Promise<Started> {
  const units = plans === 'in' ? 'in' : 'mm';
  return startDesign({
    model,
    values: readParameters(model, values, units),
    shop: builtInShop(units),
    jig: jig.build(readParameters(jig, {}, units)),
    units,
    format: 'binary',
    curves: 'arcs',
    force: true,
    version: '0.0.0',
    progress: () => {},
  });
}

interface Asked {
  readonly papers: readonly Paper[];
  readonly units: Units;
  readonly printScale?: PrintScale;
}

async function planned(all: Started, { papers, ...options }: Asked, stem: string): Promise<MadePlan> {
  const content = planOf(all, options);
  const fonts = await SUPPLIES.planFonts();
  const files =
    options.units === 'mm' && papers.length > 1
      ? await planFiles(all, fonts, options, content)
      : await Promise.all(papers.map((paper) => planPdf(content, paper, fonts)));
  const sets = {
    A4: workedOutOnce(() => planSheets(content, 'A4')),
    Letter: workedOutOnce(() => planSheets(content, 'Letter')),
  };
  const file = (name: string) => `${stem}-${name.replaceAll('/', '-')}`;
  for (const { path: name, bytes } of files) writeFileSync(file(name), bytes);
  return {
    design: all.solids.design,
    papers: all.papers,
    templates: content.templates,
    sets: {
      get A4() {
        return sets.A4();
      },
      get Letter() {
        return sets.Letter();
      },
    },
    file,
    bytes: new Map(files.map((one) => [one.path, one.bytes])),
  };
}
