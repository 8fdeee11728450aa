import frame from '../../models/frame.js';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import type { DrawingOptions } from '../../src/drawing/index.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { type Kernel, type Solids, solidsOf } from '../../src/solid/index.js';

/** A design to be drawn, by the words a person would give. */
export interface Drawn {
  readonly called: string;
  readonly model: Model;
  readonly values: Readonly<Record<string, unknown>>;
}

const named = (called: string, model: unknown, values: Drawn['values'] = {}): Drawn => ({
  called,
  model: model as Model,
  values,
});

/** Every model as it comes, and stools far from it. */
export const DRAWN: readonly Drawn[] = [
  named('stool of one tread', stool),
  named('stool of two treads', stool, { treads: '2' }),
  named('upright stool', stool, { rake: '0', taper: '0' }),
  named('stool raked by 17.3°', stool, { rake: '17.3', cutter: '6.35', treadTenons: '3' }),
  named('jig', jig),
  named('frame', frame),
];

const known = new WeakMap<Kernel, Map<Drawn, Solids>>();

/** The solids of a design, built once; the kernel owns them. */
export function solidsFor(kernel: Kernel, drawn: Drawn): Solids {
  const built = known.get(kernel) ?? new Map<Drawn, Solids>();
  known.set(kernel, built);
  const solids = built.get(drawn) ?? solidsAnew(kernel, drawn);
  built.set(drawn, solids);
  return solids;
}

/** Built once more. */
export const solidsAnew = (kernel: Kernel, { model, values }: Drawn): Solids =>
  solidsOf(kernel, model.build(readParameters(model, values, 'mm')));

export const OPTIONS: DrawingOptions = { units: 'mm', projection: 'third-angle' };
