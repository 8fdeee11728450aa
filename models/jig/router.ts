import type { Hardware } from '../../src/assembly/index.js';
import { WORLD } from '../../src/frame/index.js';
import { circle } from '../../src/profile/index.js';
import { length as inWords, soldAs } from './in-words.js';
import type { JigValues } from './jig-values.js';
import type { Layout } from './layout.js';

/** The router's base on the plate, its screws from below and the plunged cutter. */
export const router = (v: JigValues, l: Layout): readonly Hardware[] => [
  base(v, l),
  ...screws(v, l),
  {
    id: 'cutter',
    kind: 'cutter',
    name: `straight cutter ${soldAs(v.cutter)}`,
    stages: [
      { outline: circle({ diameter: v.cutter }), from: -v.plunge, to: v.plateThickness + v.baseThickness },
    ],
    place: WORLD,
    bought: false,
  },
];

/** Its holes are threaded: bores of the screws' nominal diameter. */
const base = (v: JigValues, l: Layout): Hardware => ({
  id: 'router-base',
  kind: 'router base',
  name: 'base of the plunge router',
  stages: [
    {
      outline: l.base.outline,
      bores: [
        circle({ diameter: v.bitOpening }),
        ...l.mounting.pattern.holes.map(({ at }) =>
          circle({ diameter: l.mounting.screw.diameter, centre: at }),
        ),
      ],
      from: 0,
      to: v.baseThickness,
    },
  ],
  place: { ...WORLD, origin: [0, 0, v.plateThickness] },
  bought: false,
});

function screws(v: JigValues, l: Layout): readonly Hardware[] {
  const { screw, screwLength, pattern } = l.mounting;
  const head = screw.countersunkHead;
  const headHeight = (head.diameter - screw.diameter) / 2 / Math.tan((head.angleDeg * Math.PI) / 360);
  const standard = screw.system === 'metric' ? 'ISO 10642' : 'ASME B18.6.3';
  return pattern.holes.map(
    ({ at: [x, y] }, i): Hardware => ({
      id: `screw-${i + 1}`,
      kind: 'screw',
      name: `countersunk screw ${v.screwSize} × ${inWords(screwLength, screw.system)}, ${standard}, as threaded in the router's base`,
      stages: [
        {
          outline: circle({ diameter: head.diameter }),
          from: 0,
          to: headHeight,
          endScale: screw.diameter / head.diameter,
        },
        { outline: circle({ diameter: screw.diameter }), from: headHeight, to: screwLength },
      ],
      place: { ...WORLD, origin: [x, y, v.headBelow] },
      bought: true,
    }),
  );
}
