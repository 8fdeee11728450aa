import { printFit, rulesOf, systemOf, trimmed } from '../../length/index.js';
import {
  alikeRows,
  type Block,
  heading,
  list,
  type ShopPapers,
  type TenonKind,
  table,
} from '../../shop/index.js';
import { blankWords, type DrawingUnits, sayIn } from '../sheet/index.js';

/** A fit in inches needs thousandths: tenon and slot are the same fraction on a rule. */
const fitWords = (mm: number, units: DrawingUnits): string => {
  const [first, second] = rulesOf(units).map((rule) => printFit(mm, { units: rule }));
  return second === undefined ? first! : `${first} [${second}]`;
};

/** Every kind of tenon, the strips they come from, and how a fit is tried. */
export function tenonBlocks(papers: ShopPapers, units: DrawingUnits): readonly Block[] {
  const say = sayIn(units);
  const { tenons } = papers;
  return [
    heading('Tenons', 1),
    table(
      ['mark', 'count', 'thickness × width × length', 'wood', 'joints', 'goes in'],
      tenons.map((kind) => [
        kind.mark,
        trimmed(kind.count, 0),
        `${sizeOf(kind, units)}${kind.slot.verdict === 'passed' ? '' : ' (not verified)'}`,
        kind.material,
        kind.joints.map(({ joint, count }) => `${count} in ${joint}`).join('; '),
        kind.ends.map((end) => `${end.board} ${say(end.into)} of ${say(end.depth)}`).join('; '),
      ]),
    ),
    list([
      ...alikeRows(
        tenons.map(({ mark, clearance, edges, grooves }) => [
          mark,
          `air ${fitWords(clearance, units)} over both cheeks; edges rounded to radius ${say(edges.find(({ style }) => style === 'round')?.size ?? 0)}; ${grooves.perCheek} groove${grooves.perCheek === 1 ? '' : 's'} a cheek, ${fitWords(grooves.width, units)} × ${fitWords(grooves.depth, units)}`,
        ]),
      ).map(([of, text]) => `${of}: ${text}.`),
      ...alikeRows(tenons.map(({ mark, slot }) => [mark, slot.text])).map(([of, text]) => `${of}: ${text}.`),
      ...tenons.flatMap((kind) => [
        ...kind.mitreNotes.map((text) => `${kind.mark}, ${text}.`),
        ...kind.warnings,
      ]),
      `A tenon fits when it ${tenons[0]!.fit.go}. It does not when it ${tenons[0]!.fit.noGo}.`,
      'Mill a strip whole, round its edges and groove it, then cut it apart: never plane or rout short pieces. Grain along the length. Plane all of one thickness at one setting, and try the test piece first.',
    ]),
  ];
}

/** The strips the tenons come from, piece by piece. */
export function stripBlocks({ strips }: ShopPapers, units: DrawingUnits): readonly Block[] {
  const say = sayIn(units);
  return [
    heading('Strips for the tenons'),
    table(
      ['tenons', 'wood', 'thickness × width', 'strip length', 'cut from it', 'left to hold'],
      [
        ...strips.flatMap((plan) =>
          plan.strips.map((strip) => [
            plan.marks.join(' '),
            plan.material,
            `${systemOf(units) === 'in' ? fitWords(plan.thickness, units) : say(plan.thickness)} × ${say(plan.width)}`,
            say(strip.length),
            (['tenon', 'spare', 'test piece'] as const)
              .flatMap((use) => {
                const pieces = strip.pieces.filter((piece) => piece.use === use);
                const lengths = [...new Set(pieces.map(({ mark, length }) => `${mark} ${say(length)}`))];
                return lengths.map((one) => {
                  const count = pieces.filter(({ mark, length }) => `${mark} ${say(length)}` === one).length;
                  return `${count} ${use}${count > 1 ? 's' : ''} ${one}`;
                });
              })
              .join('; '),
            say(strip.left),
          ]),
        ),
      ],
    ),
  ];
}

/** In inches the thickness, which is a fit, is told once and in thousandths. */
const sizeOf = (kind: TenonKind, units: DrawingUnits): string => {
  const say = sayIn(units);
  const inch = rulesOf(units).find((rule) => rule !== 'mm');
  if (inch === undefined) return blankWords(kind, units);
  const [thick, slot] = [kind.thickness, kind.slot.width].map((mm) => printFit(mm, { units: inch }));
  if (systemOf(units) === 'in') return `${thick} × ${say(kind.width)} × ${say(kind.length)}; slot ${slot}`;
  return `${blankWords(kind, units)}, ${thick} thick in a slot of ${slot}`;
};
