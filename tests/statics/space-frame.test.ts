import { expect, test } from 'vitest';
import type { Vec3 } from '../../src/frame/index.js';
import { type Bar, inertiaOf, portalSway, spaceFrame, type Tie, torsionOf } from '../../src/statics/index.js';

const RIGID: Vec3 = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
const AXES: Tie['axes'] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

const PORTAL = {
  force: 300,
  height: 400,
  span: 300,
  elasticity: 13_750,
  column: inertiaOf({ breadth: 40, height: 40 }),
  rail: inertiaOf({ breadth: 20, height: 60 }),
};

/** A portal on hinges, its joints of a stiffness, N·mm/rad; it stands turned by an angle about the upright. */
function portal(stiffness: number, turned = 0) {
  const { height, span, elasticity, column, rail, force } = PORTAL;
  const out: Vec3 = [Math.cos(turned), Math.sin(turned), 0];
  const across: Vec3 = [-Math.sin(turned), Math.cos(turned), 0];
  const at = (x: number, z: number): Vec3 => [x * out[0], x * out[1], z];
  const nodes = [at(0, 0), at(0, height), at(0, height), at(span, height), at(span, height), at(span, 0)];
  // of an area that hardly gives, as the closed form has it
  const bar = (from: number, inertia: number, deep: Vec3): Bar => ({
    from,
    to: from + 1,
    elasticity,
    shearModulus: elasticity / 16,
    area: 1e6,
    inertia,
    inertiaAcross: inertia,
    torsion: torsionOf(40, 40),
    deep,
  });
  const axes: Tie['axes'] = [out, across, [0, 0, 1]];
  const foot = (to: number): Tie => ({ to, at: nodes[to]!, axes, moves: RIGID, turns: [1e9, 0, 1e9] });
  const joint = (from: number): Tie => ({
    from,
    to: from + 1,
    at: nodes[from]!,
    axes,
    moves: RIGID,
    turns: [RIGID[0], stiffness, RIGID[2]],
  });
  const bars = [bar(0, column, out), bar(2, rail, [0, 0, 1]), bar(4, column, out)];
  const bent = spaceFrame(nodes, bars, [foot(0), foot(5), joint(1), joint(3)])!([
    { node: 1, at: nodes[1]!, force: [force * out[0], force * out[1], 0] },
  ]);
  const [x, y] = bent.moves[1]!;
  return { sway: x * out[0] + y * out[1], moments: [2, 3].map((i) => Math.abs(bent.passed[i]!.moment[1])) };
}

test.each([Number.POSITIVE_INFINITY, 20e6, 10e6, 5e6, 2e6])(
  'a portal whose joints give %d N·mm/rad sways as the closed form says, and each joint bears 60 N·m whatever it gives',
  (stiffness) => {
    for (const turned of [0, 0.7]) {
      const { sway, moments } = portal(stiffness, turned);
      // the rail itself gives 0.01 mm
      expect(sway).toBeCloseTo(portalSway(PORTAL, stiffness), 2);
      for (const moment of moments) expect(Math.abs(moment / 60_000 - 1)).toBeLessThan(1e-3);
    }
  },
);

test('a frame that can fall over has no answer', () => {
  const nodes: readonly Vec3[] = [
    [0, 0, 0],
    [0, 0, 100],
  ];
  const bar: Bar = {
    from: 0,
    to: 1,
    elasticity: 12_000,
    shearModulus: 750,
    area: 100,
    inertia: 1000,
    inertiaAcross: 1000,
    torsion: 100,
    deep: [1, 0, 0],
  };
  const foot: Tie = { to: 0, at: nodes[0]!, axes: AXES, moves: RIGID, turns: [0, 0, 0] };
  expect(spaceFrame(nodes, [bar], [foot])).toBeUndefined();
});
