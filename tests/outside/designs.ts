import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll } from 'vitest';
import frame from '../../models/frame.js';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import type { DesignResult } from '../../src/files/index.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { makeDesign } from '../../src/node/index.js';
import { builtInShop } from '../../src/shop/index.js';

/** A design whose files are read by others. */
export interface Case {
  readonly called: string;
  readonly model: Model;
  readonly values: Readonly<Record<string, unknown>>;
}

/** Every model; the stool with one tread and two, upright, raked and raked as far as it goes. */
export const CASES: readonly Case[] = [
  { called: 'jig', model: jig as unknown as Model, values: {} },
  { called: 'frame', model: frame as unknown as Model, values: {} },
  ...[1, 2].flatMap((treads) =>
    [0, 10, 20].map((rake) => ({
      called: `stool of ${treads === 1 ? 'one tread' : 'two treads'} at a rake of ${rake}°`,
      model: stool as unknown as Model,
      values: { treads: String(treads), rake: String(rake) },
    })),
  ),
];

/** The walls beside a 14 mm mortise in 15 mm of wood are too thin: a design with errors has its page all the same. */
export const FAILED: Case = {
  called: 'stool whose stretcher is too thin',
  model: stool as unknown as Model,
  values: { cutter: '14', stretcherThickness: '15' },
};

/** What was made, and the folder it stands in. */
export interface Made extends DesignResult {
  readonly folder: string;
}

export interface HowMade {
  readonly units?: 'mm' | 'in';
  readonly curves?: 'arcs' | 'segments';
  readonly only?: readonly string[];
  readonly format?: 'binary' | 'ascii';
}

/** Makes designs into a folder of their own that is deleted after the file's tests; each way of making once. */
export function workshop(): (of: Case, how?: HowMade) => Promise<Made> {
  const out = mkdtempSync(path.join(tmpdir(), 'tenonwright-outside-'));
  afterAll(() => rmSync(out, { recursive: true, force: true }));
  const made = new Map<string, Promise<Made>>();
  return (of, how = {}) => {
    const key = JSON.stringify([of.called, how]);
    const known = made.get(key) ?? make(of, how, path.join(out, String(made.size)));
    made.set(key, known);
    return known;
  };
}

async function make({ model, values }: Case, how: HowMade, out: string): Promise<Made> {
  const result = await makeDesign({
    model,
    shop: builtInShop('mm'),
    jig: jig.build(readParameters(jig, {}, 'mm')),
    values: readParameters(model, values, 'mm'),
    units: 'mm',
    curves: 'arcs',
    format: 'binary',
    ...how,
    out,
    // a check that fails is shown by other tests; here the files are looked at all the same
    force: true,
    version: '0.0.0',
    progress: () => {},
  });
  return { ...result, folder: path.join(out, result.design.name) };
}
