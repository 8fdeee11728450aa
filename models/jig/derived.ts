import type { Derived, Hardware } from '../../src/assembly/index.js';
import type { Vec3 } from '../../src/frame/index.js';
import { trimmed } from '../../src/length/index.js';
import type { JigValues } from './jig-values.js';
import type { Layout } from './layout.js';

/** Figures the jig worked out. */
export const derived = (l: Layout): readonly Derived[] => [
  mm('slot length', l.slotLength, 'over the round ends'),
  mm('slot width', l.slotWidth, 'clearance hole of the bolts, ISO 273 medium or ASME B18.2.8 normal'),
  mm('slot position', l.slotPosition, "from the cutter's centre, along the rails; the knobs clear the base"),
  mm('plate length', l.plateLength, 'along the rails'),
  mm('plate width', l.plateWidth, 'across the rails'),
  mm('rail length', l.railLength, 'reaches beyond the plate to start and end a cut'),
  mm('bolt length', l.stack.length, 'under the head'),
  mm('bolt in knob', l.stack.engaged, 'thread of the bolt inside the knob'),
  mm('counterbore diameter', l.stack.counterboreDiameter, "for the bolts' heads, in the rails' undersides"),
  mm('counterbore depth', l.stack.counterboreDepth, "from the rails' undersides"),
  mm('screw length', l.mounting.screwLength, "of the router's mounting screws, over the head"),
  mm('countersink diameter', l.mounting.sinkDiameter, 'at the sliding face'),
  mm('narrowest work', l.narrowest, 'thinnest work in the range that the rails close on'),
  mm('widest work', l.widest, 'thickest work the slots open to'),
  ...(l.mounting.pattern.residual === undefined
    ? []
    : [mm('measuring error', l.mounting.pattern.residual, 'largest error of a measured hole distance')]),
];

const mm = (name: string, value: number, help: string): Derived => ({ name, value, unit: 'mm', help });

/** What the person should know. */
export const notes = (v: JigValues, l: Layout): readonly string[] => [
  ...l.mounting.pattern.notes,
  ...(v.routerBase === 'round-with-flats'
    ? [
        'put the router on the plate with its flats as they were told: towards you, away from you, left and right',
      ]
    : []),
  ...standingOut(v, l),
  "the router's handles and motor are not drawn: make sure they clear the knobs before you cut the slots",
  'the bolts turn with their knobs unless their heads are held: hold the heads with a spanner, or bed them in epoxy',
  'unplug the router to set the jig; wear eye, ear and dust protection; secure the work; no climb cuts: feed against the turn of the cutter',
];

function standingOut(v: JigValues, l: Layout): readonly string[] {
  const out = v.headBelow + l.mounting.screwLength - v.plateThickness - v.baseThickness;
  if (out <= 0) return [];
  return [
    `the mounting screws stand ${trimmed(out, 1)} mm out of the router base: make sure they touch nothing inside the router`,
  ];
}

/** Where the pieces go in the exploded view. */
export function explode(
  fixings: readonly Hardware[],
  router: readonly Hardware[],
): Readonly<Record<string, Vec3>> {
  const lift: Readonly<Record<Hardware['kind'], number>> = {
    bolt: -160,
    screw: -40,
    washer: 40,
    knob: 70,
    button: 0,
    'router base': 120,
    cutter: 200,
  };
  return {
    'near-rail': [0, 0, -70],
    'far-rail': [0, 0, -70],
    ...Object.fromEntries(
      [...fixings, ...router].map((piece) => [piece.id, [0, 0, lift[piece.kind]] as const]),
    ),
  };
}
