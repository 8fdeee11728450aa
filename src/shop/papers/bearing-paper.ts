import type { Design } from '../../assembly/index.js';
import { fixed, INCH, printMass, type Say, speaker, trimmed } from '../../length/index.js';
import {
  type GlueTold,
  type Load,
  type Margin,
  nearestLimit,
  passed,
  STRENGTH_BASES,
  type Strength,
  sayFigure,
  type Worked,
} from '../../strength/index.js';
import type { Shop } from '../at-hand/index.js';
import {
  type BarRow,
  type Block,
  cautions,
  figure,
  heading,
  list,
  paragraph,
  table,
} from '../words/index.js';

/** What the paper of loads and margins is made from. */
export interface BearingPaper {
  readonly design: Design;
  /** It is told in what the shop's papers speak. */
  readonly shop: Pick<Shop, 'units'>;
  /** Undefined when nothing says what any surface is for. */
  readonly strength: Strength | undefined;
  /** What the seasons do. */
  readonly moving: Worked;
  readonly revision: string;
}

/** What the piece bears: the loads assumed, how much of each limit they take, and what nobody worked out. */
export function bearingPaper({ design, shop, strength, moving, revision }: BearingPaper): readonly Block[] {
  const say = speaker(shop.units);
  const margins = strength?.margins ?? [];
  const all = [...margins, ...moving.margins];
  const not = [...(strength?.notComputed ?? NO_USES), ...moving.notComputed];
  const standing = margins.filter(({ code }) => STANDING.has(code));
  const rest = margins.filter(({ code }) => !STANDING.has(code));
  return [
    heading(`${design.title}: what it bears`, 1),
    paragraph(
      `${revision === '' ? '' : `Revision ${revision}. `}Estimates from published averages of small clear pieces of wood and from statics. Nothing here was tried on the piece you build, and nothing here says that it is safe.`,
    ),
    ...(strength ? loads(strength, say) : []),
    ...barsOf('How it stands', standing, say),
    ...(standing.length > 0 ? [figure({ of: 'feet' })] : []),
    ...barsOf('What its boards and joints bear', rest, say),
    ...barsOf('What the seasons do to it', moving.margins, say),
    ...information(all, say),
    heading('What was not worked out'),
    list([...not.map(({ what, why }) => `${sentence(what)}: ${why}.`), ...NEVER]),
    ...(strength ? trial(strength, say) : []),
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

function loads({ asked }: Strength, say: Say): readonly Block[] {
  const { surfaces, user, glue } = asked;
  const { grainOneIn, moisture } = asked.stock;
  const rows = surfaces.flatMap(({ placed, use, loads: all }) =>
    all.map((load) => [
      placed.board.name,
      use.replace('-', ' '),
      LOAD_NAMES[load.kind],
      loadWords(load, say),
      load.basis,
    ]),
  );
  return [
    heading('Loads assumed'),
    paragraph(
      `For a person of up to ${printMass(user.kg, say.units)}${user.child ? ', and a child who uses it as well' : ''}. Wood of no more than ${trimmed(moisture, 1)} % moisture, its grain running out by no more than 1 in ${trimmed(grainOneIn, 1)}; joints glued with ${glueWords(glue)}. The piece itself weighs ${printMass(asked.resting.kg, say.units)}.`,
    ),
    table(['surface', 'used as', 'load', 'how much', 'where the figure is from'], rows),
  ];
}

const glueWords = ({ kind, shear }: GlueTold = {}): string =>
  `${kind === 'other' ? 'a glue of your own' : 'white or yellow wood glue'}${shear === undefined ? '' : ` that sheared at ${shear} MPa in your test pieces`}`;

/** Kilopascals in a N/mm², newtons a metre in a N/mm. */
const THOUSAND = 1000;

/** Pounds-force on a foot of a newton on a millimetre, and on a square foot of one on a square millimetre (NIST SP 811). */
const LBF_FOOT = (12 * INCH) / 4.4482216;
const LBF_SQUARE_FOOT = (12 * INCH) ** 2 / 4.4482216;

function loadWords({ kind, size, patch }: Load, say: Say): string {
  const inches = say.units === 'in';
  if (kind === 'spread')
    return inches
      ? `${fixed(size * LBF_SQUARE_FOOT, 0)} lbf on a square foot`
      : `${trimmed(size * THOUSAND, 2)} kN on a square metre`;
  if (kind === 'books')
    return inches
      ? `${fixed(size * LBF_FOOT, 0)} lbf on a foot`
      : `${trimmed(size * THOUSAND, 0)} N on a metre`;
  return `${sayFigure(say, size, 'N')}${patch === undefined ? '' : ` on a square of ${say.length(patch)}`}`;
}

/** A figure and its limit, lengths so fine that they read apart and none but 0 as 0. */
const apart = (value: number, limit: number, unit: Margin['unit'], say: Say): readonly [string, string] =>
  unit === 'mm' ? say.lengths(value, limit) : [sayFigure(say, value, unit), sayFigure(say, limit, unit)];

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

const barsOf = (title: string, margins: readonly Margin[], say: Say): readonly Block[] => {
  const rows = margins.flatMap((margin) => barOf(margin, say) ?? []);
  return rows.length === 0
    ? []
    : [
        heading(title),
        paragraph('Each bar is the part of its limit that is taken; a full bar is all of it.'),
        { kind: 'bars', rows },
      ];
};

/** The bar of a margin with a limit: how much of the first limit it takes, whichever way the figure gets worse. */
function barOf(margin: Margin, say: Say): BarRow | undefined {
  const { what, figure: value, unit, better, governs } = margin;
  const limit = nearestLimit(margin);
  if (limit === undefined) return undefined;
  const kept = passed(margin) === undefined;
  const share = better === 'less' ? value / limit : value > 0 ? limit / value : Number.POSITIVE_INFINITY;
  const [told, least] = apart(value, limit, unit, say);
  return {
    label: `${sentence(what)}${governs ? `, ${governs}` : ''}`,
    figure: told,
    limit: `${better === 'more' ? 'at least' : 'at most'} ${least}`,
    // what is past its limit never reads as kept, whatever rounding does
    share: kept ? Math.min(1, Math.max(0, share)) : Math.max(share, 1.01),
  };
}

const information = (margins: readonly Margin[], say: Say): readonly Block[] => {
  const items = margins
    .filter((margin) => nearestLimit(margin) === undefined)
    .map(
      ({ what, figure: value, unit, governs }) =>
        `${sentence(what)}${governs ? ` (${governs})` : ''}: ${apart(value, 0, unit, say)[0]}.`,
    );
  return items.length === 0 ? [] : [heading('For information, held against nothing'), list(items)];
};

/** What a person may do before anybody uses it. Common practice, no source. */
function trial({ asked }: Strength, say: Say): readonly Block[] {
  if (asked.surfaces.every(({ use }) => use === 'shelf')) return [];
  const full = printMass(asked.user.kg, say.units);
  return [
    heading('Try it before anyone uses it'),
    paragraph(
      'With sand bags or water cans, never with a person first, and with the glue a week old. Stand clear: put each load on and take it off from the side.',
    ),
    list([
      'Stand it on a level, dry floor. It must not rock, and every foot must touch.',
      `Load a board of ${say.length(say.units === 'in' ? 4 * INCH : 100)} square in the middle of each surface: a quarter, half, then all of ${full}, a minute each. Then the same at every edge and corner.`,
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
