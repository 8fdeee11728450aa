import type { AssemblyStep, Hardware } from '../../src/assembly/index.js';
import type { JigValues } from './jig-values.js';
import type { Layout } from './layout.js';

const mm = (name: string, value: number) => ({ name, value, unit: 'mm' as const });

/** How the made boards become a jig that cuts where it should: on to the router, squared, tried. */
export function putTogether(v: JigValues, l: Layout, fixings: readonly Hardware[]): readonly AssemblyStep[] {
  const { pattern, screwLength } = l.mounting;
  const bolt = fixings.find(({ kind }) => kind === 'bolt')!;
  // a bolt's shank runs along z of its place, away from its head
  const up = bolt.place.z[2] > 0;
  return [
    {
      kind: 'fix',
      what: `unplug the router and take its own sole plate off; screw the base plate on through its ${pattern.holes.length} countersunk holes with ${v.screwSize} screws (the thread in the router's own base: try one first), its reference face away from the router, and see that no head stands above that face`,
      figures: [mm('screw, over its head', screwLength), mm('heads below the face', v.headBelow)],
    },
    {
      kind: 'fix',
      what: 'put a straight pin in the collet and measure from it to both ends of the plate, which stops meet: they are alike when the plate is centred; countersunk screws leave no play to shift it in, so where they differ set each stop with what you measured on its side in place of half the plate',
      figures: [mm('to each end', l.plateLength / 2)],
    },
    {
      kind: 'assemble',
      what: `push the bolts through the rails from ${up ? 'below, their heads in the counterbores' : 'above, their heads down on the plate'}, and on through the slots; put a large washer and a knob on each ${up ? 'above' : 'below'} the plate, and turn it until it just holds; hold a head that turns with its knob with a spanner, or bed it in epoxy`,
      figures: [mm('bolt in the knob', l.stack.engaged)],
    },
    {
      kind: 'assemble',
      what: 'square the rails: close both on a straight board with parallel edges, measure from the pin to each rail and from each end of a rail to the edge of the plate beside it, and move the rails until both pairs are alike; then tighten the knobs',
      figures: [mm('rails close on', l.narrowest), mm('and open to', l.widest)],
    },
    {
      kind: 'test cut',
      what: 'with the router still unplugged, plunge the cutter all the way and slide the jig over the whole cut: nothing may touch it but the work',
      figures: [mm('cutter below the plate', v.plunge)],
    },
    {
      kind: 'test cut',
      what: 'cut a shallow slot in a straight offcut held between both rails, the near rail towards you, and measure the wall on either side of it; when they differ, move both rails by half the difference, the near rail closer to the cutter and the far rail farther from it when the near wall is the thicker, the other way when it is the thinner, and cut again',
      figures: [],
    },
  ];
}
