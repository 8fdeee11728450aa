import { expect, test } from 'vitest';
import type { Design } from '../../src/assembly/index.js';
import { withGroove } from '../../src/board/index.js';
import { benchOf, type Finding, runChecks } from '../../src/checks/index.js';
import { speaker } from '../../src/length/index.js';
import { measureCaptive, measureFastening, solidsOf, startKernel } from '../../src/solid/index.js';
import { type DoorChoices, panelledDoor } from '../designs/panelled-door.js';
import { smallTable, type TableChoices } from '../designs/small-table.js';

async function checked(design: Design): Promise<readonly Finding[]> {
  const kernel = await startKernel();
  const found = runChecks(benchOf(solidsOf(kernel, design), speaker('mm')));
  kernel.dispose();
  return found;
}

const codes = (found: readonly Finding[]) => [...new Set(found.map(({ code }) => code))].toSorted();
const door = async (choices: DoorChoices = {}) => checked(panelledDoor(choices));
const table = async (choices: TableChoices = {}) => checked(smallTable(choices));

test('a panelled door with room for its panel has nothing to complain of', async () => {
  expect(codes(await door())).toEqual([]);
});

test('a table whose top is held by buttons in a groove, in slots, or by screws, has no errors', async () => {
  for (const by of ['groove', 'slots', 'screws'] as const) {
    const errors = (await table({ by })).filter(({ level }) => level === 'error');
    expect(codes(errors), by).toEqual([]);
  }
});

test('what is measured of a panel is what its sizes leave', async () => {
  const kernel = await startKernel();
  const design = panelledDoor({ slack: 4, endSlack: 3, tongue: 5.5 });
  const measured = measureCaptive(solidsOf(kernel, design), design.captives![0]!);
  kernel.dispose();
  // grooves 10 deep and 6 wide; the panel stands in the middle
  for (const one of measured) {
    const half = one.way === 'across' ? 2 : 1.5;
    expect(one.room).toBeCloseTo(half, 6);
    expect(one.engaged).toBeCloseTo(10 - half, 6);
    expect(one.air).toBeCloseTo(0.5, 6);
  }
  expect(measured.map(({ way, side }) => `${way} ${side}`).toSorted()).toEqual([
    'across -1',
    'across 1',
    'along -1',
    'along 1',
  ]);
});

test('a panel without room across its grain is found, and the narrower panel it is told to take passes', async () => {
  const [found] = await door({ slack: 1 });
  // white ash, tangential 0.00274 a point (Wood Handbook, table 13-5), six points, 324 wide + 5
  expect(found!.code).toBe('panel-no-slack');
  expect(found!.limit).toBeCloseTo(0.00274 * 6 * 329, 6);
  expect(found!.measured).toBeCloseTo(1, 6);
  expect(found!.remedy).toMatch(/^make the panel 4\.\d+ mm narrower, or each groove 2\.\d+ mm deeper$/);
  expect(codes(await door({ slack: found!.limit }))).toEqual([]);
  // a design that asks for less has what it asks for, and is told that it is too little
  expect(codes(await door({ slack: 1, asked: { slack: 1 } }))).toEqual(['no-room-to-move']);
});

test('a panel that touches the floor of the grooves at its ends is found', async () => {
  const found = await door({ endSlack: 0.2 });
  expect(codes(found)).toEqual(['panel-no-end-slack']);
  expect(found[0]!.remedy).toBe('make the panel 0.8 mm shorter, or each groove 0.4 mm deeper');
  expect(codes(await door({ endSlack: 1 }))).toEqual([]);
});

test('a tongue too thick, or thin enough to rattle, is found', async () => {
  expect(codes(await door({ tongue: 5.9 }))).toEqual(['panel-tight']);
  expect(codes(await door({ tongue: 4.8 }))).toEqual(['panel-loose']);
  expect(codes(await door({ tongue: 6.2 }))).toContain('pieces-overlap');
});

test('a panel that could fall out on one side when it slides to the other is found', async () => {
  const found = await door({ grooveDepth: 5, slack: 5.4 });
  expect(codes(found)).toEqual(['panel-drops-out']);
});

test('a groove cut into a mortise is found, and stopping it where it is told cures it', async () => {
  const design = panelledDoor();
  const cutInto = (stop: number) => ({
    ...design,
    boards: design.boards.map(({ board, place }) => ({
      place,
      board:
        board.id === 'left-stile'
          ? withGroove(
              { ...board, grooves: [] },
              {
                face: 'opposite-edge',
                from: 'reference-face',
                distance: 8,
                width: 6,
                depth: 10,
                stop: { start: stop, end: 57 },
              },
            )
          : board,
    })),
  });
  const found = (await checked(cutInto(20))).find(({ code }) => code === 'groove-meets-mortise')!;
  expect(found.subjects).toEqual(['left-stile', 'bottom-rail/left-stile/1']);
  const stop = Number(/at least ([\d.]+) mm before its start \(stop\.start\)/.exec(found.remedy)![1]);
  // the mortise is 51.5 long about 38.5 from the end: it ends at 64.25, a wall of 6 beyond
  expect(stop).toBeGreaterThanOrEqual(70.2);
  expect(stop).toBeLessThan(71.5);
  expect(codes(await checked(cutInto(stop)))).not.toContain('groove-meets-mortise');
  expect(codes(await checked(cutInto(stop)))).not.toContain('groove-near-mortise');
});

test('tenons keep to the wood that grooves leave, and a stile grooved from end to end leaves too little', async () => {
  const design = panelledDoor();
  const left = design.boards.find(({ board }) => board.id === 'left-stile')!.board;
  const groove = left.grooves[0]!;
  const [low, high] = [groove.at.origin[0] - groove.length / 2, groove.at.origin[0] + groove.length / 2];
  for (const { at, length } of left.mortises) {
    const [from, to] = [at.origin[0] - length / 2, at.origin[0] + length / 2];
    expect(to < low - 6 || from > high + 6).toBe(true);
  }
  const through = await door({ through: true });
  expect(codes(through)).toContain('groove-meets-mortise');
  expect(through.find(({ code }) => code === 'groove-meets-mortise')!.remedy).toMatch(
    /^stop the groove at least/,
  );
});

test('what is measured of a button is what its sizes leave', async () => {
  const kernel = await startKernel();
  const design = smallTable({ by: 'slots', asked: { travel: 3, slotDepth: 12, screwLength: 30 } });
  const solids = solidsOf(kernel, design);
  const [one] = design.fastenings!;
  const found = measureFastening(solids, one!);
  kernel.dispose();
  // 12 - 1.5 - 0.5 of tongue, 1.5 of it lost when the top moves away
  expect(found.tongueLeft).toBeCloseTo(8.5, 3);
  expect(found.room).toBeCloseTo(1.5, 6);
  // 10 down to the tongue and 7 through it, 22 of top
  expect(found.bite).toBeCloseTo(30 - 17, 3);
  expect(found.underTip).toBeCloseTo(22 - 13, 3);
});

test('a button too long for its slot is found, and the shorter tongue it is told to take passes', async () => {
  const found = (await table({ by: 'slots', asked: { travel: 3, tongue: 11.5 } })).filter(
    ({ code }) => code === 'fastening-stuck',
  );
  expect(found[0]!.measured).toBeCloseTo(1, 1);
  const tongue = Number(/make its tongue ([\d.]+) mm long at most \(tongue\)/.exec(found[0]!.remedy)![1]);
  expect(tongue).toBeGreaterThan(10);
  expect(tongue).toBeLessThan(10.5);
  const cured = await table({ by: 'slots', asked: { travel: 3, tongue } });
  expect(codes(cured)).not.toContain('fastening-stuck');
});

test('a button that slips out of a shallow slot is found', async () => {
  const found = await table({ by: 'slots', asked: { travel: 5, slotDepth: 8 } });
  expect(codes(found)).toContain('button-slips-out');
  const deeper = Number(
    /make the slot ([\d.]+) mm deeper/.exec(
      found.find(({ code }) => code === 'button-slips-out')!.remedy,
    )![1],
  );
  expect(codes(await table({ by: 'slots', asked: { travel: 5, slotDepth: 8 + deeper } }))).not.toContain(
    'button-slips-out',
  );
});

test.each([
  ['screw-shows', 40],
  ['screw-short', 25],
] as const)(
  '%s: a screw of the wrong length is found, and the one it is told to take passes',
  async (code, screwLength) => {
    const found = (await table({ asked: { screwLength } })).find((one) => one.code === code)!;
    const right = Number(/(?:no longer than|at least) ([\d.]+) mm/.exec(found.remedy)![1]);
    expect(codes(await table({ asked: { screwLength: right } }))).toEqual([]);
  },
);
