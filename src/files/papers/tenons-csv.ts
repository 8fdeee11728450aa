import { fixed, type Say, trimmed } from '../../length/index.js';
import type { EdgeStyle, StripPlan, TenonKind } from '../../shop/index.js';
import { csv } from './csv.js';
import { type Column, lengthColumns, tableOf } from './csv-columns.js';

/** The tenon schedule as CSV, a line for each kind of tenon; areas in cm², volumes in ml. */
export const tenonsCsv = (
  kinds: readonly TenonKind[],
  strips: readonly StripPlan[],
  say: Say,
  revision: string,
): string => csv(tableOf(columns(strips, say), kinds, revision));

const columns = (strips: readonly StripPlan[], say: Say): readonly Column<TenonKind>[] => [
  { name: 'mark', of: ({ mark }) => mark },
  { name: 'count', of: ({ count }) => String(count) },
  { name: 'joints', of: ({ joints }) => joints.map((one) => `${one.count} in ${one.joint}`).join('; ') },
  { name: 'material', of: ({ material }) => material },
  { name: 'grain', of: ({ grain }) => grain },
  ...lengthColumns<TenonKind>(say, 'thickness', ({ thickness }) => thickness),
  ...lengthColumns<TenonKind>(say, 'width', ({ width }) => width),
  ...lengthColumns<TenonKind>(say, 'length', ({ length }) => length),
  { name: 'thickness is', of: ({ slot }) => (slot.verdict === 'passed' ? 'measured' : slot.verdict) },
  ...lengthColumns<TenonKind>(say, 'slot width', ({ slot }) => slot.width),
  { name: 'slot governed by', of: ({ slot }) => slot.governs },
  ...lengthColumns<TenonKind>(say, 'clearance both cheeks', ({ clearance }) => clearance),
  {
    name: 'into',
    of: ({ ends }) =>
      ends
        .map((end) => `${say.length(end.into)} of ${say.length(end.depth)} into ${end.board} (${end.grain})`)
        .join('; '),
  },
  { name: 'ends', of: ({ mitreNotes }) => (mitreNotes.length === 0 ? 'square' : mitreNotes.join('; ')) },
  ...lengthColumns<TenonKind>(say, 'round edge radius', (kind) => edge(kind, 'round').size),
  ...lengthColumns<TenonKind>(say, 'or chamfer', (kind) => edge(kind, 'chamfered').size),
  ...EDGES.map(
    ([style, name]): Column<TenonKind> => ({
      name: `glue area ${name} (cm²)`,
      of: (kind) => fixed((edge(kind, style).cheekAreaMm2 + edge(kind, style).edgeAreaMm2) / 100, 1),
    }),
  ),
  {
    name: 'air to let out (ml)',
    of: ({ reliefs }) =>
      reliefs.map((one) => `${fixed(one.displacedMm3 / 1000, 2)} in ${one.board}`).join('; '),
  },
  {
    name: 'room for glue (ml)',
    of: ({ reliefs }) =>
      reliefs
        .map((one) => `${fixed((one.roomBesideMm3 + one.roomBelowMm3) / 1000, 2)} in ${one.board}`)
        .join('; '),
  },
  {
    name: 'relief grooves',
    of: ({ grooves }) =>
      `${grooves.perCheek} on each cheek, ${say.fine(grooves.width)} wide, ${say.fine(grooves.depth)} deep`,
  },
  {
    name: 'alignment slack on offer',
    of: ({ slack }) =>
      slack
        .map(
          (one) =>
            `${one.joint}: mortise in ${one.longerIn} ${say.fine(one.length)} longer, in ${one.exactIn} exact`,
        )
        .join('; '),
  },
  { name: 'strips', of: (kind) => stripWords(kind, strips, say) },
  { name: 'fits when it', of: ({ fit }) => fit.go },
  { name: 'does not fit when it', of: ({ fit }) => fit.noGo },
  { name: 'notes', of: ({ slot, warnings }) => [slot.text, ...warnings].join('; ') },
];

const EDGES: readonly (readonly [EdgeStyle, string])[] = [
  ['round', 'round'],
  ['chamfered', 'chamfered'],
  ['square with squared mortise', 'square'],
];

const edge = ({ edges }: TenonKind, style: EdgeStyle) => edges.find((one) => one.style === style)!;

function stripWords({ mark }: TenonKind, plans: readonly StripPlan[], say: Say): string {
  const plan = plans.find(({ marks }) => marks.includes(mark));
  if (!plan) return '';
  return plan.strips
    .map(({ length, pieces, left }) => {
      const uses = (['tenon', 'spare', 'test piece'] as const).flatMap((use) => {
        const count = pieces.filter((piece) => piece.mark === mark && piece.use === use).length;
        return count === 0 ? [] : [`${count} ${use}${count > 1 ? 's' : ''}`];
      });
      return `${trimmed(pieces.length, 0)} pieces from ${say.length(length)} (${uses.join(', ') || 'none of this mark'}), ${say.length(left)} left to hold`;
    })
    .join('; ');
}
