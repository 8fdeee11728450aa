import type { Design } from '../../assembly/index.js';
import type { CutterAtHand } from '../at-hand/index.js';
import type { OutlineTemplate, PrintedTemplate } from '../boards/index.js';
import type { Aid } from '../holding/index.js';
import type { GrooveCard, SetupCard, TestBlank } from '../set-up/index.js';
import { markOf } from '../words/index.js';
import { mm, type StepDraft, tool } from './work-step.js';

/** What belongs to a job beside cutting its boards; what is left out has no step. */
export interface WholeJob {
  /** To print at full size, for marking or for the templates of sheet below. */
  readonly printed?: readonly PrintedTemplate[];
  /** Of sheet, to rout along. */
  readonly templates?: readonly Pick<OutlineTemplate, 'id' | 'boards' | 'thickness' | 'cuts'>[];
  /** Outside diameter of the guide bush that follows them; a bearing does when left out, mm. */
  readonly bush?: number;
  readonly aids?: readonly Pick<Aid, 'board' | 'count' | 'kind'>[];
  /** In the order of the cut list, where they are called X1, X2 …. */
  readonly testBlanks?: readonly Pick<TestBlank, 'setups'>[];
  /** What is wider than the lumber and so is glued up first: one board, or a length that several are milled in. */
  readonly gluedUp?: readonly GluedUp[];
  /** Boards too short to be milled by themselves, by their ids, with the mark of the length they are milled in. */
  readonly milledIn?: ReadonlyMap<string, string>;
  readonly strips?: readonly { readonly marks: readonly string[] }[];
  readonly stages?: readonly { readonly number: number; readonly joints: number }[];
  readonly grooves?: readonly GrooveCard[];
  /** Cutters at hand, for what is routed by a template. */
  readonly cutters?: readonly CutterAtHand[];
  /** What is put on last, without glue. */
  readonly fixings?: readonly { readonly held: string; readonly to: readonly string[] }[];
}

export interface GluedUp {
  /** Mark of the board or the length. */
  readonly mark: string;
  readonly boards: readonly string[];
  readonly strips: number;
}

/** A step that belongs to no single board, or to one without cutting it. */
const step = (kind: StepDraft['kind'], what: string, more: Partial<StepDraft> = {}): StepDraft => ({
  board: undefined,
  kind,
  what,
  uses: [],
  makes: [],
  cuts: [],
  figures: [],
  setup: undefined,
  ...more,
});

/** What is made before the first board: templates, and the pieces that hold, guide and clamp. */
export function firstSteps({ boards, cutter }: Design, job: WholeJob): readonly StepDraft[] {
  const { printed = [], templates = [], aids = [], testBlanks = [] } = job;
  const named = (id: string) => boards.find(({ board }) => board.id === id)?.board.name ?? id;
  const made = aids.map(({ board, count }) => (count === 1 ? board.id : `${count} × ${board.id}`));
  const prints = printed.map(
    ({ serves, turnedOver }) =>
      `${serves.map(({ name }) => name).join(' and ')}${turnedOver.length > 0 ? `, turned over for the ${turnedOver.map(({ name }) => name).join(' and ')}` : ''}`,
  );
  return [
    ...(prints.length > 0
      ? [
          step(
            'template',
            `print the templates at full size, from the plan or for a plotter, and measure the rule on each: ${prints.join('; ')}`,
          ),
        ]
      : []),
    ...(templates.length > 0
      ? [
          step(
            'template',
            `make the outline templates from sheet, to the prints stuck on it, and measure them before you cut a board to them: ${templates.map(({ id, boards: serves }) => `${id} for the ${serves.map(named).join(' and ')}`).join('; ')}; have the cutter ready that follows them, ${job.bush === undefined ? 'with a bearing as wide as it cuts (where its edges are shorter than asked, rout as deep as they go, then take the template off and let the bearing run along what is cut)' : 'in its guide bush'}`,
            { figures: followerFigures(job, cutter, templates) },
          ),
        ]
      : []),
    ...(made.length > 0
      ? [
          step(
            'aid',
            `make the aids that hold, guide and clamp the work, to the cut list: ${made.join(', ')}${taperWords(aids)}`,
          ),
        ]
      : []),
    ...(testBlanks.length > 0
      ? [
          step(
            'test blank',
            `cut the test blanks by the cut list, square at both ends: ${testBlanks.map((_, i) => markOf('test blank', i)).join(', ')}`,
          ),
        ]
      : []),
  ];
}

/**
 * The cutter that follows templates: with a bearing, or in a guide bush, where it passes the template too.
 *
 * @param templates those it is to follow
 */
export const followerFigures = (
  { bush }: WholeJob,
  cutter: number,
  templates: NonNullable<WholeJob['templates']>,
): StepDraft['figures'] => {
  const most = (of: (one: (typeof templates)[number]) => number) => Math.max(...templates.map(of));
  return [
    tool('cutter', cutter),
    ...(bush === undefined ? [] : [tool('guide bush', bush)]),
    mm(
      'cutting edges at least',
      most(({ cuts }) => cuts),
    ),
    ...(bush === undefined
      ? []
      : [
          mm(
            'reach below the router at least',
            most(({ cuts, thickness }) => cuts + thickness),
          ),
        ]),
  ];
};

/** Tapers are sawn while there is wood to hold: those over the height run along the whole length, the others end it. */
function taperWords(aids: NonNullable<WholeJob['aids']>): string {
  const tapers = aids.flatMap(({ board }) => board.bevels.map(({ normal }) => ({ board, normal })));
  const ids = (along: boolean) =>
    tapers
      .filter(({ normal: [x, y] }) => Math.abs(y) > Math.abs(x) === along)
      .map(({ board }) => board.id)
      .join(', ');
  const [ripped, sawn] = [ids(true), ids(false)];
  return [
    ripped && `; rip the taper of ${ripped} along the whole length before you crosscut it`,
    sawn && `; saw the slope of ${sawn} at the end of its length, clamped, before you cut it off`,
  ]
    .filter(Boolean)
    .join('');
}

/** What is wider than the lumber becomes a blank before it is milled. */
export const edgeJoint = ({ mark, boards, strips }: GluedUp): StepDraft =>
  step(
    'edge joint',
    `joint the edges of the ${strips} strips of ${mark} and glue them up into one blank, clamped flat (the drawings of the layouts give their sizes); mill it when the glue has cured`,
    boards.length === 1 ? { board: boards[0] } : {},
  );

/** A short board is planed and ripped in a length that the machines take. */
export const milledInLength = (draft: StepDraft, mark: string): StepDraft => ({
  ...draft,
  what: `${draft.what}; plane and rip it as part of length ${mark}, and crosscut it off last`,
});

/** The test cut of a card, before its first mortise. */
export function testCutStep({ id, testCut }: SetupCard, { testBlanks = [] }: WholeJob): StepDraft {
  const at = testBlanks.findIndex(({ setups }) => setups.includes(id));
  const blank = at < 0 ? 'a piece of waste as thick as the work' : `test blank X${at + 1}`;
  const sawn = testCut.sawnFirst.length > 0 ? ', its faces sawn as the card says' : '';
  return step(
    'test cut',
    `set up by card ${id}, make its test cut in ${blank}${sawn}, measure it and correct the set-up before you cut the work`,
    { setup: id },
  );
}

/** A dry fit needs the tenons, and the tenons need the slots the cutter really cuts. */
export function tenonSteps({ joints }: Design, { strips = [] }: WholeJob): readonly StepDraft[] {
  const count = joints.reduce((sum, joint) => sum + joint.tenons.length, 0);
  if (count === 0) return [];
  const marks = [...new Set(strips.flatMap((plan) => plan.marks))];
  return [
    ...(marks.length > 0
      ? [
          step(
            'strip',
            `mill the strips for ${count === 1 ? 'the tenon' : 'the tenons'} ${marks.join(', ')}, try their test pieces in a mortise, then round the edges and groove the cheeks while they are whole`,
          ),
        ]
      : []),
    step(
      'tenons',
      count === 1
        ? 'make the tenon to the tenon schedule, from a strip tried in a test mortise'
        : `make the ${count} tenons to the tenon schedule, from strips tried in a test mortise`,
    ),
  ];
}

/** After the last board: all together dry, glue, finish, and last what is held without glue. */
export function lastSteps(
  { joints, boards, putTogether = [] }: Design,
  { stages = [], fixings = [] }: WholeJob,
): readonly StepDraft[] {
  const named = (id: string) => boards.find(({ board }) => board.id === id)?.board.name ?? id;
  const glued = joints.length > 0 && stages.length > 0;
  return [
    ...(glued
      ? [
          step(
            'dry assembly',
            'put everything together dry, with every clamp and pad in its place, and measure the diagonals as the glue-up paper says',
          ),
          ...stages.map(({ number, joints: closed }) =>
            step(
              'glue-up',
              `glue up stage ${number}, ${closed === 1 ? 'one joint' : `${closed} joints`}, as the glue-up paper says; leave it in the clamps as long as the glue needs`,
            ),
          ),
          step(
            'finish',
            'take off dried glue and pencil marks, wait a few days until the joints are dry, then sand them flush and apply the finish',
          ),
        ]
      : []),
    ...putTogether.map(({ kind, what, figures }) => step(kind, what, { figures })),
    ...fixings.map(({ held, to }) =>
      step(
        'fix',
        `fix the ${named(held)} last, not glued, to the ${to.map(named).join(', ')}, as the glue-up paper tells`,
      ),
    ),
  ];
}
