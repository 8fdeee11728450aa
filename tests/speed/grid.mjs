/**
 * A lattice of rails with about as many joints as asked for, to see how time grows with the size of a design.
 *
 * Long rails lie side by side; between each neighbouring pair stand short rails, joined at both ends.
 *
 * node tests/speed/grid.mjs <joints> prints the seconds of processor of each stage as JSON.
 */
import process from 'node:process';
import jig from '../../dist/models/jig.js';
import { assemble } from '../../dist/src/assembly/index.js';
import { makeBoard } from '../../dist/src/board/index.js';
import { benchInShop, benchOf, runChecks } from '../../dist/src/checks/index.js';
import { frame, WORLD } from '../../dist/src/frame/index.js';
import { speaker } from '../../dist/src/length/index.js';
import { readParameters } from '../../dist/src/model/index.js';
import { builtInShop } from '../../dist/src/shop/index.js';
import { gate, solidsOf, startKernel } from '../../dist/src/solid/index.js';

/** Rail section and the clear squares between rails, mm. */
const [WIDTH, THICKNESS, CLEAR] = [90, 24, 160];

/** Short rails between two long ones; a long rail is then 1250 mm, whatever the number of joints. */
const BAYS = 5;

function grid(joints) {
  const rows = Math.max(1, Math.round(joints / (2 * BAYS)));
  const pitch = WIDTH + CLEAR;
  const long = Array.from({ length: rows + 1 }, (_, row) => ({
    board: makeBoard({
      id: `long-${row}`,
      blank: { length: BAYS * pitch, width: WIDTH, thickness: THICKNESS },
    }),
    place: { ...WORLD, origin: [0, row * pitch, 0] },
  }));
  const spots = Array.from({ length: rows * BAYS }, (_, i) => [Math.floor(i / BAYS), i % BAYS]);
  const short = spots.map(([row, bay]) => ({
    board: makeBoard({
      id: `short-${row}-${bay}`,
      blank: { length: CLEAR, width: WIDTH, thickness: THICKNESS },
    }),
    place: frame([CLEAR / 2 + bay * pitch + WIDTH, row * pitch + WIDTH, 0], [0, 0, 1], [0, 1, 0]),
  }));
  return assemble({
    name: 'grid',
    title: 'Grid',
    cutter: 8,
    boards: [...long, ...short],
    joints: spots.flatMap(([row, bay]) =>
      [row, row + 1].map((side) => ({ a: `short-${row}-${bay}`, b: `long-${side}`, options: { cutter: 8 } })),
    ),
  });
}

const kernel = await startKernel();
const times = {};
const timed = (stage, work) => {
  const start = process.cpuUsage();
  const made = work();
  const { user, system } = process.cpuUsage(start);
  times[stage] = (user + system) / 1e6;
  return made;
};
const design = timed('design', () => grid(Number(process.argv[2] ?? 100)));
const solids = timed('solids', () => {
  const made = solidsOf(kernel, design);
  gate(made);
  return made;
});
const measured = timed('measures', () => benchOf(solids, speaker('mm')));
// how each mortise is held, and the order of glue-up
const bench = timed('bench', () =>
  benchInShop(measured, builtInShop('mm'), jig.build(readParameters(jig, {}, 'mm'))),
);
const findings = timed('checks', () => runChecks(bench));
kernel.dispose();
const errors = findings.filter(({ level }) => level === 'error').length;
process.stdout.write(`${JSON.stringify({ joints: design.joints.length, errors, ...times })}\n`);
