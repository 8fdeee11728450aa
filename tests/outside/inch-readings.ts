import type { Design } from '../../src/assembly/index.js';
import type { SetupCard } from '../../src/shop/index.js';

/** Sizes of a design by how a plan in inches tells them, mm. */
export interface ToldSizes {
  readonly wood: readonly number[];
  readonly settings: readonly number[];
  readonly tools: readonly number[];
}

/** Sizes a person measures on the wood, and figures set on the router, from the design and its cards alone. */
export function toldSizes({ boards }: Design, cards: readonly SetupCard[]): ToldSizes {
  return {
    wood: boards.flatMap(({ board: { blank, mortises } }) => [
      ...[blank.length, blank.width, blank.thickness],
      ...mortises.flatMap(({ length, at }) => [length, ...at.origin.filter((size) => size > 1)]),
    ]),
    tools: boards.flatMap(({ board: { mortises, holes, slots } }) => [
      ...[...mortises, ...slots].map(({ width }) => width),
      ...holes.flatMap(({ diameter, counterbore, countersink }) => [
        diameter,
        ...[counterbore, countersink].flatMap((one) => one?.diameter ?? []),
      ]),
    ]),
    settings: cards.flatMap(({ depth, stopDistance, guideOffset, nearRail, farRail, cutter, passes }) => [
      ...[depth, stopDistance, ...passes.map((pass) => pass.depth)],
      ...(guideOffset === undefined ? [] : [guideOffset]),
      ...[nearRail, farRail].flatMap((rail) => (rail ? [rail.distance - cutter / 2] : [])),
    ]),
  };
}

/** An inch figure as it stands on a page. */
interface Reading {
  readonly text: string;
  readonly mm: number;
  readonly decimal: boolean;
}

/** `1.218"`, `1-7/32"`, `9"`. */
const READING = /(?<![\d/.-])(\d+\.\d+|(?:\d+-)?\d+\/\d+|\d+)"/g;

const readings = (page: string): readonly Reading[] =>
  [...page.matchAll(READING)].map(([, figure]) => {
    const [whole, part] = figure!.includes('-') ? figure!.split('-') : ['0', figure!];
    const [top, under = '1'] = part!.split('/');
    const inches = Number(whole) + Number(top) / Number(under);
    return { text: `${figure}"`, mm: inches * 25.4, decimal: figure!.includes('.') };
  });

/** Sizes of wood that a page tells in two ways: with two fractions that both round one size. */
export function toldTwoWays(page: string, { wood }: ToldSizes): readonly string[] {
  const all = readings(page).filter(({ decimal }) => !decimal);
  return wood.flatMap((size) => {
    const near = all.filter(({ mm }) => Math.abs(mm - size) <= 25.4 / 64 - 0.01);
    const ways = [...new Set(near.map(({ text }) => text))];
    return ways.length > 1 ? [`${size / 25.4}: ${ways.join(', ')}`] : [];
  });
}

/** What a board's page tells in thousandths that is not what a tool cuts: a rule cannot find it. */
export const finerThanARule = (pages: readonly string[], { tools }: ToldSizes): readonly string[] =>
  pages
    .filter((page) => /^ ?Boards, \d/m.test(page))
    .flatMap(readings)
    .filter(({ mm, decimal }) => decimal && !tools.some((size) => Math.abs(size - mm) < 0.014))
    .map(({ text }) => text);

/** Settings that no page of these tells in thousandths. */
export const untold = (pages: readonly string[], { settings }: ToldSizes): readonly number[] => {
  const all = pages.flatMap(readings).filter(({ decimal }) => decimal);
  return settings.filter((size) => !all.some(({ mm }) => Math.abs(mm - size) < 0.014));
};

/** The print test is told in both; a source is told in its own words; what is sold in mm says so behind its inches. */
const MEANT = /Print at 100 % \(actual size\)/;
const SOURCE = /\b(EN|ISO|CFR|ASME|TR) \d|Wood Handbook|common practice|our own|from memory|M\d/;

/** Lines of a plan in inches that hold a metric figure. */
export const strayMetric = (pages: readonly string[]): readonly string[] =>
  linesOf(pages).filter((line) =>
    /(?<![×\d] ?)\b\d[\d.]*\s?(mm|cm|m|mm²|cm²|m³|°C)(?![\w)])/.test(line.replace(/\(\d+(\.\d+)? mm\)/g, '')),
  );

/** Lines of a plan in mm that hold a figure in inches. */
export const strayInches = (pages: readonly string[]): readonly string[] =>
  linesOf(pages).filter((line) => /\d"(?!\w)|\d (inch|inches|ft)\b/.test(line));

const linesOf = (pages: readonly string[]): readonly string[] =>
  pages
    .filter((page) => !MEANT.test(page))
    .flatMap((page) => page.split('\n'))
    .filter((line) => !SOURCE.test(line));
