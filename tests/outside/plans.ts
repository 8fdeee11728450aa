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
import { withMade } from '../../src/files/made/made.js';
import { planFiles, planOf } from '../../src/files/plan/plan-files.js';
import { readParameters } from '../../src/model/index.js';
import { SUPPLIES } from '../../src/node/index.js';
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

/** Makes plans into a folder that is deleted after the file's tests; each once. */
export function planWorkshop(): (
  of: Case,
  printScale?: PrintScale,
  units?: 'mm' | 'in' | 'dual',
) => Promise<MadePlan> {
  const out = mkdtempSync(path.join(tmpdir(), 'tenonwright-plan-'));
  afterAll(() => rmSync(out, { recursive: true, force: true }));
  const made = new Map<string, Promise<MadePlan>>();
  return (of, printScale, units = 'mm') => {
    const key = JSON.stringify([of.called, printScale, units]);
    const known = made.get(key) ?? planned(of, printScale, path.join(out, String(made.size)), units);
    made.set(key, known);
    return known;
  };
}

/** A plan made anew. */
export const planned = (
  { model, values }: Case,
  printScale: PrintScale | undefined,
  stem: string,
  units: 'mm' | 'in' | 'dual' = 'mm',
): Promise<MadePlan> =>
  withMade(
    {
      model,
      values: readParameters(model, values, 'mm'),
      shop: builtInShop(units === 'in' ? 'in' : 'mm'),
      jig: jig.build(readParameters(jig, {}, 'mm')),
      units: units === 'in' ? 'in' : 'mm',
      format: 'binary',
      curves: 'arcs',
      force: true,
      version: '0.0.0',
      progress: () => {},
    },
    async (all) => {
      const options = { units, ...(printScale ? { printScale } : {}) };
      const content = planOf(all, options);
      const files = await planFiles(all, await SUPPLIES.planFonts(), options);
      const file = (name: string) => `${stem}-${name.replaceAll('/', '-')}`;
      for (const { path: name, bytes } of files) writeFileSync(file(name), bytes);
      return {
        design: all.solids.design,
        papers: all.papers,
        templates: content.templates,
        sets: { A4: planSheets(content, 'A4'), Letter: planSheets(content, 'Letter') },
        file,
        bytes: new Map(files.map((one) => [one.path, one.bytes])),
      };
    },
  );
