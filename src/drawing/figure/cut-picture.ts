import type { Vec2 } from '../../frame/index.js';
import type { Cut, Outcome } from '../../shop/index.js';
import {
  BODY,
  boxLoop,
  disc,
  type LineKind,
  letters,
  path,
  type SheetEntity,
  type Stroke,
  stroke,
  textWidth,
} from '../sheet/index.js';
import { longGrain } from '../view/index.js';

/** One cut of a strip. mm on the sheet */
export interface CutPicture {
  readonly width: number;
  readonly height: number;
  /** @param at lower left corner */
  readonly draw: (at: Vec2) => readonly SheetEntity[];
}

/** What a picture is told of its cut. */
export interface PicturedCut {
  readonly cut: Cut;
  /** All cuts of the stock: one of them takes up what this one leaves. */
  readonly cuts: readonly Cut[];
  /** Whether its grain is drawn. */
  readonly grain: boolean;
  /** The setting, said. */
  readonly setting: string;
}

/** Of the ring round a cut's number, of the air round things, of the space the saw line takes, mm. */
export const RING = 2.15;

/** Of the rings round numbers of two digits: they stand on the same middle. */
const WIDE_RING = 2.4;
const AIR = 0.7;
const APART = 1.3;

/** Height of the row above the wood and of one below it, mm. */
const HEAD = 4.6;
const BELOW = 4;

/** Most that the wood takes, mm: long ways it is cut along, and across. */
const MOST: Readonly<Record<Cut['direction'], Vec2>> = { rip: [10, 7], crosscut: [15, 4.4] };

/** Least of the wood, and of what a cut leaves on a side, mm: these pictures keep no scale. */
const LEAST_WOOD = 3.4;
const LEAST_SIDE = 1.4;

/** Apart in grain of a finished piece, mm. */
const GRAIN_APART = 0.9;

/** What a cut leaves on one side: where it lies from the fence on, as shares of a length, and what is written beside it. */
interface Side {
  readonly from: number;
  readonly to: number;
  readonly outcome: Outcome;
  readonly label: Label | undefined;
}

type Label = { readonly words: string; readonly bold: boolean } | { readonly next: number };

/**
 * A cut as it is made: the piece in hand with the fence under it (a stop beside it for a crosscut), the saw's line right
 * through it, and both sides drawn apart. A finished piece shows its grain and its mark, one that another cut takes up that
 * cut's number in a thin ring; an offcut is plain, trimmings are dashed.
 */
export function cutPicture({ cut, cuts, grain, setting }: PicturedCut): CutPicture {
  const rip = cut.direction === 'rip';
  const [wood, tall] = woodOf(cut);
  const [near, far] = sidesOf(cut, cuts, rip ? tall : wood);
  const sides = [near, far].filter((side) => side !== undefined);
  const widths = sides.map(({ label }) => (label ? labelWidth(label) : 0));
  const head = 2 * RING + AIR + textWidth(setting, BODY);
  const beside = wood + 2 * AIR + 1;
  const width = Math.max(
    head,
    rip
      ? beside + Math.max(0, ...widths)
      : Math.max(wood + 2 * AIR + 1, widths.reduce((sum, one) => sum + one, 0) + 2),
  );
  const height = HEAD + (rip ? MOST.rip[1] : MOST.crosscut[1] + BELOW) + 1;
  return {
    width,
    height,
    draw: ([x, y]) => {
      const [left, low] = [x + AIR + 0.5, y + 0.9 + (rip ? (MOST.rip[1] - tall) / 2 : BELOW)];
      const loopOf = ({ from, to }: Side): readonly Vec2[] =>
        rip
          ? boxLoop({ minX: left, minY: low + from, maxX: left + wood, maxY: low + to })
          : boxLoop({ minX: left + from, minY: low, maxX: left + to, maxY: low + tall });
      const line = near ? near.to + APART / 2 : -APART / 2;
      const over = 1;
      return [
        ...numberRing('visible', [x + RING, y + height - RING], cut.number),
        letters([x + 2 * RING + AIR, y + height - RING - BODY / 2], setting, SMALLEST),
        // the fence, or the stop a length is cut to
        rip
          ? stroke('frame', [left, low - 0.8], [left + wood, low - 0.8])
          : stroke('frame', [left - 0.8, low], [left - 0.8, low + tall]),
        ...sides.flatMap((side) => [
          ...(grain && side.outcome.kind === 'part'
            ? longGrain([loopOf(side)], GRAIN_APART).map((points) => path('hatching', points))
            : []),
          path(side.outcome.kind === 'trimming' ? 'hidden' : 'dimension', loopOf(side), true),
        ]),
        rip
          ? stroke('visible', [left - over, low + line], [left + wood + over, low + line])
          : stroke('visible', [left + line, low - over], [left + line, low + tall + over]),
        ...(rip ? besideWood(sides, [x + beside, low], line) : belowWood(near, far, [x, x + width], y)),
      ];
    },
  };
}

/** The number of a cut: in a heavy ring where it is made, in a thin one on what it takes up. */
export const numberRing = (line: LineKind, [x, y]: Vec2, number: number): readonly Stroke[] => [
  disc(line, [x, y], number < 10 ? RING : WIDE_RING),
  letters([x, y - BODY / 2], String(number), {
    ...SMALLEST,
    anchor: 'middle',
    bold: number < 10 && line === 'visible',
  }),
];

const SMALLEST = { height: BODY } as const;

/** The piece in hand as large as its picture lets it be; what is very long or very narrow is drawn shorter and wider. */
function woodOf({ piece, direction }: Cut): Vec2 {
  const [width, height] = MOST[direction];
  const factor = Math.min(width / piece.length, height / piece.width);
  return [Math.max(LEAST_WOOD, factor * piece.length), Math.max(LEAST_WOOD, factor * piece.width)];
}

/** What lies on either side of the saw's line, along the side the fence measures. */
function sidesOf(
  { piece, direction, at, near, far }: Cut,
  cuts: readonly Cut[],
  run: number,
): readonly [near: Side | undefined, far: Side | undefined] {
  const whole = direction === 'rip' ? piece.width : piece.length;
  const share =
    near.kind === 'nothing'
      ? 0
      : far.kind === 'nothing'
        ? run
        : Math.min(run - APART - LEAST_SIDE, Math.max(LEAST_SIDE, (at / whole) * run - APART / 2));
  const side = (from: number, to: number, outcome: Outcome): Side | undefined =>
    outcome.kind === 'nothing' ? undefined : { from, to, outcome, label: labelOf(outcome, cuts) };
  return [side(0, share, near), side(near.kind === 'nothing' ? 0 : share + APART, run, far)];
}

function labelOf(outcome: Outcome, cuts: readonly Cut[]): Label | undefined {
  switch (outcome.kind) {
    case 'part':
      return { words: outcome.id, bold: true };
    case 'offcut':
      return { words: outcome.id, bold: false };
    case 'piece':
      return { next: takenUpBy(outcome.rect, cuts) };
    default:
      return undefined;
  }
}

/** The number of the cut that takes up what another leaves. */
export const takenUpBy = (rect: Cut['piece'], cuts: readonly Cut[]): number =>
  cuts.find(({ piece }) => piece === rect)!.number;

const labelWidth = (label: Label): number =>
  'next' in label ? 2 * RING : textWidth(label.words, BODY, label.bold);

/** Words of both sides right of the wood, never nearer to each other than rings let them be. */
function besideWood(sides: readonly Side[], [x, low]: Vec2, line: number): readonly SheetEntity[] {
  const middles = sides.map(({ from, to }) => (from + to) / 2);
  const apart = RING + 0.2;
  return sides.flatMap(({ label }, i) => {
    const middle = middles[i]!;
    const y =
      sides.length < 2
        ? middle
        : middle < line
          ? Math.min(middle, line - apart)
          : Math.max(middle, line + apart);
    return label ? labelled(label, [x, low + y]) : [];
  });
}

/** Words of both sides below the wood: one at each end. */
const belowWood = (
  near: Side | undefined,
  far: Side | undefined,
  [left, right]: Vec2,
  y: number,
): readonly SheetEntity[] => [
  ...(near?.label ? labelled(near.label, [left, y + RING]) : []),
  ...(far?.label ? labelled(far.label, [right - labelWidth(far.label), y + RING]) : []),
];

/** @param at left end, half way up */
function labelled(label: Label, [x, y]: Vec2): readonly SheetEntity[] {
  return 'next' in label
    ? numberRing('table', [x + RING, y], label.next)
    : [letters([x, y - BODY / 2], label.words, { ...SMALLEST, bold: label.bold })];
}
