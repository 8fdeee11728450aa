import type { Hardware, PlacedBoard } from '../../src/assembly/index.js';
import { type Frame, pointOut, WORLD } from '../../src/frame/index.js';
import { circle, type Profile, polygon } from '../../src/profile/index.js';
import { length as inWords } from './in-words.js';
import type { JigValues } from './jig-values.js';
import type { Layout } from './layout.js';

/** The bolt, washer and knob of every hole in a rail, as the rail stands. */
export const fixings = (rail: PlacedBoard, v: JigValues, l: Layout): readonly Hardware[] =>
  rail.board.holes.flatMap((hole, i) => {
    const [x, y] = pointOut(rail.place, hole.at.origin);
    const at = (z: number): Frame => ({ ...WORLD, origin: [x, y, z] });
    const id = (what: string) => `${rail.board.id}-${what}-${i + 1}`;
    return [
      bolt(id('bolt'), at(l.stack.counterboreDepth - v.railHeight), v, l),
      washer(id('washer'), at(v.plateThickness), v, l),
      knob(id('knob'), at(v.plateThickness + l.stack.bolt.largeWasher.thickness), v, l),
    ];
  });

/** Stands under its head, tip up. */
function bolt(id: string, place: Frame, v: JigValues, l: Layout): Hardware {
  const { bolt, length } = l.stack;
  const standard = bolt.system === 'metric' ? 'ISO 4014' : 'ASME B18.2.1';
  return {
    id,
    kind: 'bolt',
    name: `hex bolt ${v.boltSize} × ${inWords(length, bolt.system)}, ${standard}`,
    stages: [
      { outline: hexagon(bolt.hexHead.acrossFlats), from: -bolt.hexHead.height, to: 0 },
      { outline: circle({ diameter: bolt.diameter }), from: 0, to: length },
    ],
    place,
    bought: true,
  };
}

function washer(id: string, place: Frame, v: JigValues, l: Layout): Hardware {
  const { system, largeWasher } = l.stack.bolt;
  const standard = system === 'metric' ? 'ISO 7093-1' : 'ASME B18.22.1 type B wide';
  return {
    id,
    kind: 'washer',
    name: `large washer ${v.boltSize}, ${standard}`,
    stages: [
      {
        outline: circle({ diameter: largeWasher.diameter }),
        bores: [circle({ diameter: largeWasher.bore })],
        from: 0,
        to: largeWasher.thickness,
      },
    ],
    place,
    bought: true,
  };
}

/** Its thread is a bore of the bolt's nominal diameter. */
function knob(id: string, place: Frame, v: JigValues, l: Layout): Hardware {
  const outline = circle({ diameter: v.knobDiameter });
  return {
    id,
    kind: 'knob',
    name: `knob ${v.boltSize}, ${inWords(v.knobDiameter, l.stack.bolt.system)} across, thread ${inWords(v.knobThread, l.stack.bolt.system)} deep`,
    stages: [
      { outline, bores: [circle({ diameter: l.stack.bolt.diameter })], from: 0, to: v.knobThread },
      { outline, from: v.knobThread, to: v.knobHeight },
    ],
    place,
    bought: true,
  };
}

/** Sharp corners: the largest a head can be. */
function hexagon(acrossFlats: number): Profile {
  const radius = acrossFlats / Math.sqrt(3);
  return polygon(
    Array.from({ length: 6 }, (_, i) => ({
      x: radius * Math.cos((i * Math.PI) / 3),
      y: radius * Math.sin((i * Math.PI) / 3),
    })),
  );
}
