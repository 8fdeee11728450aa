// Frames and treads against CalculiX, a program of finite elements.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect } from 'vitest';
import type { Vec3 } from '../../src/frame/index.js';
import {
  type Bar,
  inertiaOf,
  portalMoment,
  spaceFrame,
  type Tie,
  torsionOf,
  workingBreadth,
} from '../../src/statics/index.js';
import { CCX, printed, testWith } from './programs.js';

/** What CalculiX prints of a model: rows of numbers under each heading, in the order of its steps. */
function solved(model: readonly string[]): readonly { readonly what: string; readonly rows: number[][] }[] {
  const folder = mkdtempSync(path.join(tmpdir(), 'elements-'));
  try {
    writeFileSync(path.join(folder, 'model.inp'), `${model.join('\n')}\n`);
    printed(CCX, '-i', path.join(folder, 'model'));
    return readFileSync(path.join(folder, 'model.dat'), 'utf8')
      .split(/\n(?= *(?:displacements|stresses))/)
      .filter((block) => /^ *(displacements|stresses)/.test(block))
      .map((block) => {
        const [what, ...lines] = block.trim().split('\n');
        const rows = lines.filter((line) => /\d/.test(line));
        return { what: what!, rows: rows.map((line) => line.trim().split(/\s+/).map(Number)) };
      });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const RIGID: Vec3 = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
const AXES: readonly [Vec3, Vec3, Vec3] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** 400 high, 300 wide, columns 40 × 40, rail 60 high and 20 thick, 300 N sideways at the top, feet on hinges. */
const PORTAL = { height: 400, span: 300, force: 300, elasticity: 13_750 } as const;

/** Sways by our own frame, mm, and moments of its two joints, N·mm. */
function portalByFrame() {
  const { height, span, force, elasticity } = PORTAL;
  const shared = { elasticity, shearModulus: elasticity / 16, deep: [0, 0, 1] as Vec3 };
  const bar = (from: number, to: number, thick: number, high: number, deep: Vec3): Bar => ({
    ...shared,
    from,
    to,
    area: thick * high,
    inertia: inertiaOf({ breadth: thick, height: high }),
    inertiaAcross: inertiaOf({ breadth: high, height: thick }),
    torsion: torsionOf(thick, high),
    deep,
  });
  const nodes: readonly Vec3[] = [
    [0, 0, 0],
    [0, 0, height],
    [0, 0, height],
    [span, 0, height],
    [span, 0, height],
    [span, 0, 0],
  ];
  const bars = [bar(0, 1, 40, 40, [1, 0, 0]), bar(2, 3, 20, 60, [0, 0, 1]), bar(4, 5, 40, 40, [1, 0, 0])];
  const hinge = (to: number): Tie => ({ to, at: nodes[to]!, axes: AXES, moves: RIGID, turns: [1e9, 0, 1e9] });
  const joint = (from: number, to: number): Tie => ({
    from,
    to,
    at: nodes[to]!,
    axes: AXES,
    moves: RIGID,
    turns: RIGID,
  });
  const bent = spaceFrame(nodes, bars, [hinge(0), hinge(5), joint(1, 2), joint(3, 4)])!([
    { node: 1, at: nodes[1]!, force: [force / 2, 0, 0] },
    { node: 4, at: nodes[4]!, force: [force / 2, 0, 0] },
  ]);
  return { sway: bent.moves[1]![0], moments: [2, 3].map((tie) => bent.passed[tie]!.moment[1]) };
}

/** The same of beam elements; they have shear as well. */
function portalByElements(): number {
  const { height, span, force, elasticity } = PORTAL;
  const nodes = new Map<string, number>();
  const at = (x: number, z: number) => {
    const key = `${x.toFixed(4)}, 0, ${z.toFixed(4)}`;
    nodes.set(key, nodes.get(key) ?? nodes.size + 1);
    return nodes.get(key)!;
  };
  const line = (from: readonly [number, number], to: readonly [number, number]) => {
    const place = (share: number) =>
      at(from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share);
    return Array.from({ length: 8 }, (_, i) => [0, 1, 2].map((half) => place((2 * i + half) / 16)));
  };
  const columns = [...line([0, 0], [0, height]), ...line([span, 0], [span, height])];
  const rail = line([0, height], [span, height]);
  const feet = [at(0, 0), at(span, 0)];
  const tops = [at(0, height), at(span, height)];
  const [print] = solved([
    '*NODE, NSET=ALL',
    ...[...nodes].map(([place, id]) => `${id}, ${place}`),
    '*ELEMENT, TYPE=B32, ELSET=COLUMNS',
    ...columns.map((of, i) => `${i + 1}, ${of.join(', ')}`),
    '*ELEMENT, TYPE=B32, ELSET=RAIL',
    ...rail.map((of, i) => `${i + 101}, ${of.join(', ')}`),
    '*MATERIAL, NAME=WOOD',
    '*ELASTIC',
    `${elasticity}, 0.3`,
    '*BEAM SECTION, ELSET=COLUMNS, MATERIAL=WOOD, SECTION=RECT',
    '40, 40',
    '0, 1, 0',
    '*BEAM SECTION, ELSET=RAIL, MATERIAL=WOOD, SECTION=RECT',
    '20, 60',
    '0, 1, 0',
    '*BOUNDARY',
    ...feet.map((foot) => `${foot}, 1, 3`),
    ...tops.map((top) => `${top}, 2, 2`),
    '*STEP',
    '*STATIC',
    '*CLOAD',
    ...tops.map((top) => `${top}, 1, ${force / 2}`),
    '*NODE PRINT, NSET=ALL',
    'U',
    '*END STEP',
  ]);
  return print!.rows.find(([id]) => id === tops[0])![1]!;
}

testWith(
  CCX,
  'a portal sways as far as one of beam elements, and its two joints bear half the load each',
  () => {
    const { sway, moments } = portalByFrame();
    expect(Math.abs(sway / portalByElements() - 1)).toBeLessThan(0.03);
    for (const moment of moments) expect(Math.abs(moment)).toBeCloseTo(portalMoment(PORTAL), -1);
  },
);

/** A tread of flat-sawn red oak on two lines, 2600 N on a patch of 100 × 100; mm, MPa. */
const TREAD = { span: 300, board: 200, thick: 20, load: 2600, patch: 100 } as const;

/** E along, across and through; Poisson's ratios; G. Wood Handbook (2021), Table 5–1; G across and Poisson's ratios from memory. */
const RED_OAK = [1, 0.082, 0.154].map((share) => share * 13_750);
const POISSON = [0.448, 0.35, 0.29];
const SHEAR = [0.081, 0.089, 0.02].map((share) => share * 13_750);

/** Greatest stress along the grain, MPa, and how far the middle of the patch sinks, mm. */
function treadByElements(from: number): { readonly stress: number; readonly sinks: number } {
  const { span, board, thick, load, patch } = TREAD;
  const [step, layers] = [10, 5];
  // half of it: the other half mirrors it
  const [nx, ny] = [span / 2 / step, board / step];
  const at = (x: number, y: number, z: number) => 1 + x + (nx + 1) * (y + (ny + 1) * z);
  const upTo = (n: number) => Array.from({ length: n + 1 }, (_, i) => i);
  const grid = upTo(layers).flatMap((z) => upTo(ny).flatMap((y) => upTo(nx).map((x) => [x, y, z] as const)));
  const cells = grid.filter(([x, y, z]) => x < nx && y < ny && z < layers);
  // a square's share at its corners
  const pushed = new Map<number, number>();
  for (const [x, y] of cells.filter(([, , z]) => z === layers - 1)) {
    if ((x + 1) * step <= (span - patch) / 2 || y * step < from || y * step >= from + patch) continue;
    for (const corner of [
      at(x, y, layers),
      at(x + 1, y, layers),
      at(x, y + 1, layers),
      at(x + 1, y + 1, layers),
    ])
      pushed.set(corner, (pushed.get(corner) ?? 0) + ((load / patch ** 2) * step ** 2) / 4);
  }
  const [moved, stresses] = solved([
    '*NODE, NSET=ALL',
    ...grid.map(([x, y, z]) => `${at(x, y, z)}, ${x * step}, ${y * step}, ${(z * thick) / layers}`),
    '*ELEMENT, TYPE=C3D8I, ELSET=WOOD',
    ...cells.map(
      ([x, y, z], i) =>
        `${i + 1}, ${[0, 1].flatMap((up) => [at(x, y, z + up), at(x + 1, y, z + up), at(x + 1, y + 1, z + up), at(x, y + 1, z + up)]).join(', ')}`,
    ),
    '*MATERIAL, NAME=OAK',
    '*ELASTIC, TYPE=ENGINEERING CONSTANTS',
    [...RED_OAK, ...POISSON, ...SHEAR.slice(0, 2)].join(', '),
    `${SHEAR[2]}`,
    '*SOLID SECTION, ELSET=WOOD, MATERIAL=OAK',
    '*BOUNDARY',
    ...upTo(ny).map((y) => `${at(0, y, 0)}, 3, 3`),
    ...upTo(ny).flatMap((y) => upTo(layers).map((z) => `${at(nx, y, z)}, 1, 1`)),
    `${at(nx, ny / 2, 0)}, 2, 2`,
    '*STEP',
    '*STATIC',
    '*CLOAD',
    ...[...pushed].map(([node, newton]) => `${node}, 3, ${-newton}`),
    '*NODE PRINT, NSET=ALL',
    'U',
    '*EL PRINT, ELSET=WOOD',
    'S',
    '*END STEP',
  ]);
  const middle = at(nx, from === 0 ? 0 : ny / 2, 0);
  // the outermost points stand off the surface by what a Gauss point stands off an element's face
  const outermost = thick / 2 - (thick / layers / 2) * (1 - 1 / Math.sqrt(3));
  return {
    sinks: -moved!.rows.find(([id]) => id === middle)![3]!,
    stress: (Math.max(...stresses!.rows.map((row) => row[2]!)) * (thick / 2)) / outermost,
  };
}

testWith(
  CCX,
  'a patch works on 160 mm within a tread and on 110 mm at its edge, of which 100 are counted',
  () => {
    const { span, board, thick, load, patch } = TREAD;
    const moment = (load / 4) * (span - patch / 2);
    const breadth = (stress: number) => (6 * moment) / (thick ** 2 * stress);
    const within = treadByElements((board - patch) / 2);
    const edge = treadByElements(0);
    // of a finer net: 13.46 and 19.84 MPa at points 8.943 mm from the middle of the thickness
    expect(Math.abs(within.stress / (13.46 * 1.119) - 1)).toBeLessThan(0.05);
    expect(Math.abs(edge.stress / (19.84 * 1.119) - 1)).toBeLessThan(0.05);
    expect(Math.abs(within.sinks / 0.917 - 1)).toBeLessThan(0.05);
    expect(Math.abs(edge.sinks / 1.536 - 1)).toBeLessThan(0.05);
    expect(Math.abs(breadth(within.stress) / workingBreadth(board, 'middle') - 1)).toBeLessThan(0.05);
    expect(Math.abs(breadth(edge.stress) / 110 - 1)).toBeLessThan(0.05);
    expect(workingBreadth(board, 'edge')).toBeLessThan(breadth(edge.stress));
  },
);
