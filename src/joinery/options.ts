import { JoinError, type Voice } from '../errors.js';

import { type AxisOption, checkedAxis } from './axis.js';

/** How two boards are to be joined; lengths mm. Whatever is left out follows common practice. */
export interface JoinOptions {
  /** Names the joint; `a/b` when left out. */
  readonly id?: string;
  /** Cutter diameter = mortise width; from the cutters given, the nearest to a third of the thinner board when left out. */
  readonly cutter?: number;
  /** Cutter diameters at hand, mm. */
  readonly cutters?: readonly number[];
  /** Number of tenons side by side. */
  readonly tenons?: number;
  /** Width of each tenon. */
  readonly tenonWidth?: number;
  /** Thickness of the tenon; cutter less both cheek clearances when left out. */
  readonly tenonThickness?: number;
  /** The way the mortises run; square to the seat, `face`, when left out. */
  readonly axis?: AxisOption;
  /** Mortise depth in each board, by board id; along the axis, from the short point of an oblique mouth. */
  readonly depths?: Readonly<Record<string, number>>;
  readonly cheekClearance?: number;
  readonly edgeClearance?: number;
  readonly endGap?: number;
  /** Wood left between a mortise's end and the edge of the seat. */
  readonly endInset?: number;
  /** Wood left between two mortises in a row. */
  readonly web?: number;
  /** Lay the mortises across the seat's longer side instead of along it. */
  readonly turned?: boolean;
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
  'tenonWidth',
  'tenonThickness',
  'axis',
  'depths',
  'cheekClearance',
  'edgeClearance',
  'endGap',
  'endInset',
  'web',
  'turned',
  'shiftAcross',
  'shiftAlong',
]);

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
  for (const name of ['cutter', 'tenonWidth', 'tenonThickness'] as const) {
    const value = options[name];
    if (value !== undefined && value <= 0)
      refuse((say) => `${name} is ${say.fine(value)}; allowed is more than 0: give more`);
  }
  for (const name of ['cheekClearance', 'edgeClearance', 'endGap', 'endInset', 'web'] as const) {
    const value = options[name];
    if (value !== undefined && value < 0)
      refuse((say) => `${name} is ${say.fine(value)}; allowed is 0 or more: give more`);
  }
  checkedAxis(joint, options.axis);
  const { tenons, depths = {} } = options;
  if (tenons !== undefined && !(Number.isInteger(tenons) && tenons >= 1)) {
    refuse(`${tenons} tenons are asked for: give a whole number from 1`);
  }
  for (const [board, depth] of Object.entries(depths)) {
    if (!boards.includes(board)) {
      refuse(`a depth is given for ${board}, which is not in this joint: name ${boards.join(' or ')}`);
    }
    if (!Number.isFinite(depth)) refuse(`the depth in ${board} is ${depth}: give a number`);
    if (depth <= 0)
      refuse((say) => `the depth in ${board} is ${say.fine(depth)}; allowed is more than 0: give more`);
  }
  return options;
}
