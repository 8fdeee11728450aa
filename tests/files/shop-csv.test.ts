import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stockVolume } from '../../src/board/index.js';
import { csv } from '../../src/files/papers/csv.js';
import { cutListCsv } from '../../src/files/papers/cutlist-csv.js';
import { hardwareCsv } from '../../src/files/papers/hardware-csv.js';
import { tenonsCsv } from '../../src/files/papers/tenons-csv.js';
import { INCH, parseLength, speaker, type Units } from '../../src/length/index.js';
import { cutList, hardwareList, tenonSchedule, tenonStrips, woodBill } from '../../src/shop/index.js';
import { aShop } from '../shop/a-shop.js';
import { plainJig, stoolWith } from '../shop/designs.js';

/** A reader written from the grammar of RFC 4180, section 2, and nothing else. */
function read(text: string): string[][] {
  const rows: string[][] = [];
  let rest = text;
  while (rest !== '') {
    const row: string[] = [];
    for (;;) {
      const field = /^"((?:[^"]|"")*)"|^([^",\r\n]*)/.exec(rest)!;
      row.push(field[1] === undefined ? field[2]! : field[1].replaceAll('""', '"'));
      rest = rest.slice(field[0].length);
      if (!rest.startsWith(',')) break;
      rest = rest.slice(1);
    }
    if (!rest.startsWith('\r\n')) throw new Error(`no line break at ${JSON.stringify(rest.slice(0, 20))}`);
    rest = rest.slice(2);
    rows.push(row);
  }
  return rows;
}

/** The rows of a file by the names of its columns. */
const records = (text: string): Map<string, string>[] => {
  const [names, ...rows] = read(text);
  return rows.map((row) => new Map(row.map((field, i) => [names![i]!, field])));
};

describe('CSV', () => {
  test('every text comes back from a reader that follows RFC 4180', () => {
    const field = fc.string({ unit: fc.constantFrom('a', '"', ',', '\r', '\n', ' ', '½', '=', '×') });
    const table = fc
      .integer({ min: 2, max: 4 })
      .chain((width) => fc.array(fc.array(field, { minLength: width, maxLength: width }), { minLength: 1 }));
    fc.assert(
      fc.property(table, (rows) => {
        expect(read(csv(rows))).toEqual(rows);
      }),
    );
  });

  test('quotes are doubled and lines end in CR LF (RFC 4180, 2.1 and 2.7)', () => {
    expect(
      csv([
        ['size (in)', 'of'],
        ['1-3/4"', 'legs'],
      ]),
    ).toBe('size (in),of\r\n"1-3/4""",legs\r\n');
  });

  test('a row with a field too few is a fault of the program', () => {
    expect(() => csv([['a', 'b'], ['c']])).toThrow(RangeError);
  });
});

const stool = stoolWith({ treads: 2 });

const REVISION = '0badf00d FAILED CHECKS';

function filesOf(units: Units, shop = aShop) {
  const say = speaker(units);
  const tenons = tenonSchedule(stool, shop, say);
  const strips = tenonStrips(tenons, shop);
  const volumes = new Map(stool.boards.map(({ board }) => [board.id, stockVolume(board).volume]));
  const rows = cutList({ design: stool, shop, volumes, strips });
  return {
    tenons,
    rows,
    tenonRecords: records(tenonsCsv(tenons, strips, say, REVISION)),
    cutRecords: records(cutListCsv(rows, woodBill(rows), say, REVISION)),
  };
}

describe('the cut list of a stool', () => {
  test('in mm gives every size of every line to the hundredth', () => {
    const { rows, cutRecords } = filesOf('mm');
    rows.forEach(({ finished, rough }, i) => {
      for (const side of ['thickness', 'width', 'length'] as const) {
        expect(Math.abs(Number(cutRecords[i]!.get(`${side} (mm)`)) - finished[side])).toBeLessThan(0.00501);
        expect(Math.abs(Number(cutRecords[i]!.get(`rough ${side} (mm)`)) - rough!.size[side])).toBeLessThan(
          0.00501,
        );
      }
    });
  });

  test('in inches gives the rule and the decimal of one length', () => {
    const { rows, cutRecords } = filesOf('in');
    rows.forEach(({ finished }, i) => {
      for (const side of ['thickness', 'width', 'length'] as const) {
        expect(Number(cutRecords[i]!.get(`${side} (in decimal)`)) * INCH).toBeCloseTo(finished[side], 2);
        const onRule = parseLength(cutRecords[i]!.get(`${side} (in)`)!, { units: 'in' });
        // half of 1/32 inch
        expect(Math.abs(onRule - finished[side])).toBeLessThan(0.397);
      }
    });
  });

  test('ends with the wood to buy, whose items add up to the last line', () => {
    const { cutRecords } = filesOf('mm');
    const volumes = cutRecords
      .filter((record) => record.get('kind') === 'wood to buy')
      .map((record) => Number(record.get('rough volume all (m³)')));
    const total = volumes.pop()!;
    expect(volumes.length).toBeGreaterThan(3);
    expect(volumes.reduce((sum, one) => sum + one, 0)).toBeCloseTo(total, 5);
  });

  test('says so where no rough allowance is known, and leaves the rough sizes empty', () => {
    const { roughAllowance: _unknown, ...shop } = aShop;
    const { cutRecords } = filesOf('mm', shop);
    expect(cutRecords[0]!.get('rough length (mm)')).toBe('');
    expect(cutRecords[0]!.get('allowances')).toContain('not verified');
    expect(cutRecords.at(-1)!.get('allowances')).toContain('not verified');
  });

  test('names the mirror image of a handed board', () => {
    const { cutRecords } = filesOf('mm');
    const hands = cutRecords.map((record) => record.get('hand')).filter((hand) => hand !== '');
    expect(hands).toEqual(
      ['right-side', 'left-side', 'right-step', 'left-step'].map((id) => `mirror image of ${id}`),
    );
  });
});

test('the tenon schedule gives count, sizes and whether the slot was measured', () => {
  const { tenons, tenonRecords } = filesOf('mm');
  expect(tenonRecords).toHaveLength(tenons.length);
  tenons.forEach((kind, i) => {
    const record = tenonRecords[i]!;
    expect(record.get('count')).toBe(String(kind.count));
    // the narrower of its two slots less 0.2: end grain 8.02, but a seam has face grain 8.06 on both sides
    const seam = kind.joints.every(({ joint }) => /step\/(left|right)-side$/.test(joint));
    expect(Number(record.get('thickness (mm)'))).toBeCloseTo(seam ? 7.86 : 7.82, 9);
    expect(Number(record.get('length (mm)'))).toBeCloseTo(kind.length, 2);
    expect(record.get('thickness is')).toBe('measured');
  });
  const unmeasured = filesOf('mm', { ...aShop, cutters: [] }).tenonRecords[0]!;
  expect(unmeasured.get('thickness is')).toBe('not verified');
  expect(Number(unmeasured.get('thickness (mm)'))).toBeCloseTo(7.8, 9);
});

test('the hardware of the jig is four lines of four', () => {
  const rows = records(hardwareCsv(hardwareList(plainJig()), REVISION));
  expect(rows.map((row) => row.get('count'))).toEqual(['4', '4', '4', '4']);
  expect(rows[0]!.get('name')).toBe('hex bolt M8 × 60, ISO 4014');
});

test('every row of every list begins with the revision, and says when checks failed', () => {
  const { tenonRecords, cutRecords } = filesOf('mm');
  const hardware = records(hardwareCsv(hardwareList(plainJig()), REVISION));
  for (const list of [tenonRecords, cutRecords, hardware]) {
    expect(list.length).toBeGreaterThan(0);
    for (const record of list) expect([...record][0]).toEqual(['revision', REVISION]);
  }
});
