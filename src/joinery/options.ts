import { JoinError, type Voice } from '../errors.js';
import type { Season } from '../movement/index.js';

import { type AxisOption, checkedAxis } from './axis.js';

/**
 * What is done where two tenons would meet in a board, or leave too little wood between them: both are `shorten`ed, this one
 * stops short and `butt`s against the other, their mortises `stagger` along one row, or the tenons run on and their ends are
 * cut to a `mitre` with a gap between them.
 */
export type Meet = (typeof MEETS)[number];

const MEETS = ['shorten', 'butt', 'stagger', 'mitre'] as const;

/** What a shop tells of the wood that is joined in it. */
export interface WoodTold {
  /** What it goes through; a heated room and flat-sawn wood when left out. */
  readonly season?: Season;
  /** What tenons are cut from; the wood of the boards they join when left out. */
  readonly tenonWood?: string;
}

/** How two boards are to be joined; lengths mm. Whatever is left out follows common practice. */
export interface JoinOptions extends WoodTold {
  /** Names the joint; `a/b` when left out. */
  readonly id?: string;
  /** Cutter diameter = mortise width; from the cutters given, the nearest to a third of the thinner board when left out. */
  readonly cutter?: number;
  /** Cutter diameters at hand, mm. */
  readonly cutters?: readonly number[];
  /** Number of tenons side by side in each patch, and in each of its rows. */
  readonly tenons?: number;
  /** From the middle of one tenon to the middle of the next. */
  readonly spacing?: number;
  /** Middles of the tenons along the seat, towards its x, from its middle. */
  readonly places?: readonly number[];
  /** Rows side by side through the thickness; 2 in thick stock, 1 when left out. */
  readonly rows?: number;
  /** Width of each tenon. */
  readonly tenonWidth?: number;
  /** Thickness of the tenon; cutter less both cheek clearances when left out. */
  readonly tenonThickness?: number;
  /** The way the mortises run; square to the seat, `face`, when left out. */
  readonly axis?: AxisOption;
  /** Mortise depth in each board, by board id; along the axis, from the short point of an oblique mouth. */
  readonly depths?: Readonly<Record<string, number>>;
  /** No usual depth goes beyond this: as far as the cutter at hand cuts. A depth that is given does. */
  readonly deepest?: number;
  readonly cheekClearance?: number;
  /** Of both edges together; the usual millimetre when left out, and more where a wide tenon swells. */
  readonly edgeClearance?: number;
  readonly endGap?: number;
  /** Wood left between a mortise's end and the edge of the seat. */
  readonly endInset?: number;
  /** Wood left between two mortises in a row. */
  readonly web?: number;
  /** Lay the mortises across the seat's longer side, or across the board named by `along`, instead of along it. */
  readonly turned?: boolean;
  /**
   * Id of the board whose edge the mortises run along: its grain on a face or edge, its width on an end. The longer side of
   * the seat when left out; where no side is longer, the width of the board that stands on its end.
   */
  readonly along?: string;
  /**
   * Where the boards touch in several patches: the ones to join, counted from the largest, equal ones from left to right,
   * front to back and up; `largest` is the first alone. Every patch with room when left out.
   */
  readonly patches?: 'largest' | readonly number[];
  /** How its tenons make way for those of another joint that they would meet; the best of all when left out. */
  readonly meet?: Meet;
  /** Off-centre shift across the mortises, towards the seat's y; balanced between the walls when left out. */
  readonly shiftAcross?: number;
  /** Shift along the mortises, towards the seat's x; balanced between the ends when left out. */
  readonly shiftAlong?: number;
}

const KNOWN: ReadonlySet<string> = new Set<keyof JoinOptions>([
  'id',
  'cutter',
  'cutters',
  'tenons',
  'spacing',
  'places',
  'rows',
  'tenonWidth',
  'tenonThickness',
  'axis',
  'depths',
  'deepest',
  'cheekClearance',
  'edgeClearance',
  'season',
  'tenonWood',
  'endGap',
  'endInset',
  'web',
  'turned',
  'along',
  'patches',
  'meet',
  'shiftAcross',
  'shiftAlong',
]);

/** An option's name as words: `end gap`. */
const worded = (name: string): string => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** @throws JoinError for an option that does not exist or a size that is not a usable number */
export function checkedOptions(joint: string, boards: readonly string[], options: JoinOptions): JoinOptions {
  const refuse = (text: string | ((say: Voice) => string)): never => {
    throw new JoinError(
      'join-option',
      (say) => `joint ${joint}: ${typeof text === 'string' ? text : text(say)}`,
    );
  };
  for (const [name, value] of Object.entries(options)) {
    if (!KNOWN.has(name)) refuse(`there is no option ${name}: use one of ${[...KNOWN].join(', ')}`);
    if (typeof value === 'number' && !Number.isFinite(value)) refuse(`${name} is ${value}: give a number`);
  }
  for (const name of ['cutter', 'tenonWidth', 'tenonThickness', 'spacing', 'deepest'] as const) {
    const value = options[name];
    if (value !== undefined && value <= 0)
      refuse((say) => `${worded(name)} is ${say.fine(value)}; it must be more than 0: give more`);
  }
  for (const name of ['cheekClearance', 'edgeClearance', 'endGap', 'endInset', 'web'] as const) {
    const value = options[name];
    if (value !== undefined && value < 0)
      refuse((say) => `${worded(name)} is ${say.fine(value)}; it must be 0 or more: give more`);
  }
  checkedAxis(joint, options.axis);
  checkedPlaces(options, boards, refuse);
  const { tenons, depths = {} } = options;
  if (tenons !== undefined && !(Number.isInteger(tenons) && tenons >= 1)) {
    refuse(`it asks for ${tenons} tenons: give a whole number, 1 or more`);
  }
  for (const [board, depth] of Object.entries(depths)) {
    if (!boards.includes(board)) {
      refuse(`it gives a depth for ${board}, which is not in this joint: name ${boards.join(' or ')}`);
    }
    if (!Number.isFinite(depth)) refuse(`the depth in ${board} is ${depth}: give a number`);
    if (depth <= 0)
      refuse((say) => `the depth in ${board} is ${say.fine(depth)}; it must be more than 0: give more`);
  }
  return options;
}

function checkedPlaces(
  { tenons, spacing, places, rows, along, patches, meet }: JoinOptions,
  boards: readonly string[],
  refuse: (text: string) => never,
): void {
  if (places !== undefined) {
    if (places.length === 0 || !places.every(Number.isFinite))
      refuse(`places is ${JSON.stringify(places)}: give one number or more`);
    if (tenons !== undefined || spacing !== undefined)
      refuse('it gives places, and tenons or spacing as well: give the places alone');
  }
  if (rows !== undefined && rows !== 1 && rows !== 2) refuse(`it asks for ${rows} rows: give 1 or 2`);
  if (along !== undefined && !boards.includes(along))
    refuse(`along names ${along}, which is not in this joint: name ${boards.join(' or ')}`);
  if (meet !== undefined && !MEETS.includes(meet))
    refuse(`meet is ${JSON.stringify(meet)}: use one of ${MEETS.join(', ')}`);
  const whole = (n: number) => Number.isInteger(n) && n >= 1;
  if (patches === undefined || patches === 'largest') return;
  if (!Array.isArray(patches) || patches.length === 0 || !patches.every(whole))
    refuse(`patches is ${JSON.stringify(patches)}: give 'largest', or a list of whole numbers from 1`);
}
