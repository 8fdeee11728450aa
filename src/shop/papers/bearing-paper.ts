import type { Design } from '../../assembly/index.js';
import { fixed, trimmed } from '../../length/index.js';
import { GRAVITY } from '../../statics/index.js';
import {
  type GlueTold,
  type Load,
  type Margin,
  nearestLimit,
  passed,
  STRENGTH_BASES,
  type Strength,
  type Worked,
} from '../../strength/index.js';
import {
  type BarRow,
  type Block,
  cautions,
  figure,
  heading,
  inBoth,
  list,
  paragraph,
  table,
} from '../words/index.js';

/** What the paper of loads and margins is made from. */
export interface BearingPaper {
  readonly design: Design;
  /** Undefined when nothing says what any surface is for. */
  readonly strength: Strength | undefined;
  /** What the seasons do. */
  readonly moving: Worked;
  readonly revision: string;
}

/** What the piece bears: the loads assumed, how much of each limit they take, and what nobody worked out. */
export function bearingPaper({ design, strength, moving, revision }: BearingPaper): readonly Block[] {
  const margins = strength?.margins ?? [];
  const all = [...margins, ...moving.margins];
  const not = [...(strength?.notComputed ?? NO_USES), ...moving.notComputed];
  const standing = margins.filter(({ code }) => STANDING.has(code));
  const rest = margins.filter(({ code }) => !STANDING.has(code));
  return [
    heading(`${design.title}: what it bears`, 1),
    paragraph(
      `Revision ${revision}. Estimates from published averages of small clear pieces of wood and from statics. Nothing here was tried on the piece you build, and nothing here says that it is safe.`,
    ),
    ...(strength ? loads(strength) : []),
    ...barsOf('How it stands', standing),
    ...(standing.length > 0 ? [figure({ of: 'feet' })] : []),
    ...barsOf('What its boards and joints bear', rest),
    ...barsOf('What the seasons do to it', moving.margins),
    ...information(all),
    heading('What was not worked out'),
    list([...not.map(({ what, why }) => `${sentence(what)}: ${why}.`), ...NEVER]),
    ...(strength ? trial(strength) : []),
    ...bases(all),
    cautions([
      'These are estimates, no test and no approval. Local rules and a licensed engineer decide.',
      'Look for knots, checks and grain that runs out before you use a board for this piece: the figures hold for clear wood.',
      ...design.notes,
    ]),
  ];
}

/** The piece has no use that is told. */
const NO_USES: Strength['notComputed'] = [
  { what: 'what it bears and how it stands', why: 'nothing says what its surfaces are for' },
];

const STANDING: ReadonlySet<string> = new Set(['edge-outside-feet', 'tips-sideways', 'tips-under-load']);

const NEVER: readonly string[] = [
  'Jumping, falls and blows: a load that comes at once does more than one that is set down.',
  'Knots, checks, short grain and wood that was damaged: only clear wood with the slope of grain told above.',
  'Loads that stay for years on glue, joints with gaps wider than their fit, and glue outdoors.',
  'Floors that are wet, soft, steep or out of level, and how people behave.',
];

const LOAD_NAMES: Readonly<Record<Load['kind'], string>> = {
  proof: 'test load in the middle',
  edge: 'test load at an edge',
  person: 'a person',
  sideways: 'push sideways',
  spread: 'load all over it',
  books: 'row of books',
};

function loads({ asked }: Strength): readonly Block[] {
  const { surfaces, user, glue } = asked;
  const { grainOneIn, moisture } = asked.stock;
  const rows = surfaces.flatMap(({ placed, use, loads: all }) =>
    all.map((load) => [
      placed.board.name,
      use.replace('-', ' '),
      LOAD_NAMES[load.kind],
      loadWords(load),
      load.basis,
    ]),
  );
  return [
    heading('Loads assumed'),
    paragraph(
      `For a person of up to ${massWords(user.kg)}${user.child ? ', and a child who uses it as well' : ''}. Wood of no more than ${trimmed(moisture, 1)} % moisture, its grain running out by no more than 1 in ${trimmed(grainOneIn, 1)}; joints glued with ${glueWords(glue)}. The piece itself weighs ${massWords(asked.resting.kg)}.`,
    ),
    table(['surface', 'used as', 'load', 'how much', 'where the figure is from'], rows),
  ];
}

const glueWords = ({ kind, shear }: GlueTold = {}): string =>
  `${kind === 'other' ? 'a glue of your own' : 'white or yellow wood glue'}${shear === undefined ? '' : ` that sheared at ${shear} MPa in your test pieces`}`;

const KG_TO_LB = 1 / 0.45359237;

const massWords = (kg: number): string => `${trimmed(kg, 1)} kg = ${fixed(kg * KG_TO_LB, 0)} lb`;

/** Kilopascals in a N/mm², newtons a metre in a N/mm. */
const THOUSAND = 1000;

function loadWords({ kind, size, patch }: Load): string {
  if (kind === 'spread') return `${trimmed(size * THOUSAND, 2)} kN on a square metre`;
  if (kind === 'books') return `${trimmed(size * THOUSAND, 0)} N on a metre`;
  return `${figureInBoth(size, 'N')}${patch === undefined ? '' : ` on a square of ${inBoth(patch)}`}`;
}

/** A figure with its unit; lengths in both, forces with the weight that presses as hard. */
function figureInBoth(value: number, unit: Margin['unit']): string {
  const digits = Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2;
  if (unit === 'mm') return inBoth(value);
  if (unit === 'N') return `${fixed(value, digits)} N (${massWords(value / GRAVITY)})`;
  if (unit === 'deg') return `${fixed(value, 1)}°`;
  return `${fixed(value, digits)}${unit && ` ${unit}`}`;
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

const barsOf = (title: string, margins: readonly Margin[]): readonly Block[] => {
  const rows = margins.flatMap((margin) => barOf(margin) ?? []);
  return rows.length === 0
    ? []
    : [
        heading(title),
        paragraph('Each bar is the part of its limit that is taken; a full bar is all of it.'),
        { kind: 'bars', rows },
      ];
};

/** The bar of a margin with a limit: how much of the first limit it takes, whichever way the figure gets worse. */
function barOf(margin: Margin): BarRow | undefined {
  const { what, figure: value, unit, better, governs } = margin;
  const limit = nearestLimit(margin);
  if (limit === undefined) return undefined;
  const kept = passed(margin) === undefined;
  const share = better === 'less' ? value / limit : value > 0 ? limit / value : Number.POSITIVE_INFINITY;
  return {
    label: `${sentence(what)}${governs ? `, ${governs}` : ''}`,
    figure: figureInBoth(value, unit),
    limit: `${better === 'more' ? 'at least' : 'at most'} ${figureInBoth(limit, unit)}`,
    // what is past its limit never reads as kept, whatever rounding does
    share: kept ? Math.min(1, Math.max(0, share)) : Math.max(share, 1.01),
  };
}

const information = (margins: readonly Margin[]): readonly Block[] => {
  const items = margins
    .filter((margin) => nearestLimit(margin) === undefined)
    .map(
      ({ what, figure: value, unit, governs }) =>
        `${sentence(what)}${governs ? ` (${governs})` : ''}: ${figureInBoth(value, unit)}.`,
    );
  return items.length === 0 ? [] : [heading('For information, held against nothing'), list(items)];
};

/** What a person may do before anybody uses it. Common practice, no source. */
function trial({ asked }: Strength): readonly Block[] {
  if (asked.surfaces.every(({ use }) => use === 'shelf')) return [];
  const full = massWords(asked.user.kg);
  return [
    heading('Try it before anyone uses it'),
    paragraph(
      'With sand bags or water cans, never with a person first, and with the glue a week old. Stand clear: put each load on and take it off from the side.',
    ),
    list([
      'Stand it on a level, dry floor. It must not rock, and every foot must touch.',
      `Load a board of ${inBoth(100)} square in the middle of each surface: a quarter, half, then all of ${full}, a minute each. Then the same at every edge and corner.`,
      'Listen and look after each load: a crack, a joint that opens, or a surface that stays bent is the end of the trial.',
      'Loaded in the middle, push it by hand at its highest edge from every side. It must neither tip nor creep.',
      'Take the load off, lay a straightedge on it, and look at every shoulder again.',
      'Look again after its first winter and its first summer, and whenever it was dropped.',
    ]),
  ];
}

/** What the figures rest on, each once. */
const bases = (margins: readonly Margin[]): readonly Block[] => {
  const found = [...new Set(margins.map(({ code }) => STRENGTH_BASES[code]))];
  return found.length === 0
    ? []
    : [heading('What the figures rest on'), list(found.map((basis) => `${sentence(basis)}.`))];
};
