import type { Design } from '../../assembly/index.js';
import { fixed, INCH, speaker } from '../../length/index.js';
import { sayFigure } from '../../strength/index.js';
import { moveWords } from '../glue-up/index.js';
import {
  alikeRows,
  type Block,
  cautions,
  figure,
  heading,
  list,
  paragraph,
  strong,
  table,
} from '../words/index.js';
import { nameOf, namesOf } from './board-names.js';
import { clampBlocks } from './clamp-blocks.js';
import type { ShopPapers } from './shop-papers.js';

/** What the paper of the glue-up is made from. */
export type GlueUpPaper = Pick<
  ShopPapers,
  'tenons' | 'glueUp' | 'clamps' | 'diagonals' | 'glue' | 'shop' | 'revision'
> & {
  readonly design: Design;
};

/** The glue-up: what goes into what and which way, clamps with pads, diagonals, glue and time. */
export function glueUpPaper(paper: GlueUpPaper): readonly Block[] {
  const { design, shop, revision } = paper;
  const glued = design.joints.length > 0;
  const words = [
    ...(revision === '' ? [] : [`Revision ${revision}. Shop: ${shop.name}.`]),
    ...(glued ? ['Put everything together dry, with every clamp, before you open the glue.'] : []),
  ];
  const head = [
    heading(`${design.title}: glue-up`, 1),
    ...(words.length === 0 ? [] : [paragraph(words.join(' '))]),
  ];
  if (!glued) return [...head, paragraph('Nothing is glued.')];
  return [
    ...head,
    ...seatings(paper),
    ...stages(paper),
    ...fixings(paper),
    ...glueBlocks(paper),
    cautions([
      'Wear gloves and let in fresh air, as the label on the glue says.',
      'Clamps can slip: stand aside when you tighten them.',
    ]),
    ...clampBlocks(paper),
    ...diagonalBlocks(paper),
  ];
}

function seatings({ design, glueUp, tenons, shop }: GlueUpPaper): readonly Block[] {
  const say = speaker(shop.units);
  const rows = glueUp.seatings.map(({ joint, tenons, board, standsOut }) => [
    joint,
    String(tenons.length),
    nameOf(design, board),
    say.length(standsOut),
  ]);
  const mitred = tenons.flatMap(({ mark, mitreNotes }) => mitreNotes.map((note) => `${mark}, ${note}`));
  return [
    heading('First: tenons into one board'),
    paragraph(
      'Glue each tenon into the board named, where its mortise is in end grain or an edge, then treat it as part of that board. Measure how far it stands out before the glue grabs.',
    ),
    table(['joint', 'tenons', 'into', 'each stands out'], alikeRows(rows)),
    ...(mitred.length > 0 ? [paragraph('Seat these the right way round:'), list(mitred)] : []),
  ];
}

function stages({ design, glueUp, clamps, shop }: GlueUpPaper): readonly Block[] {
  const say = speaker(shop.units);
  const told = glueUp.stages.flatMap((stage): readonly Block[] => {
    const steps = glueUp.steps.filter((step) => step.stage === stage.number);
    const open =
      stage.openMinutes === undefined
        ? 'the shop file gives no open time for the glue: not verified'
        : `open time ${fixed(stage.openMinutes, 0)} min${stage.verdict === 'passed' ? '' : `: ${stage.verdict}`}`;
    const rows = steps.map((step) => [
      step.id,
      namesOf(design, step.moving),
      namesOf(design, step.still),
      moveWords(step.direction),
      say.length(step.travel),
      step.freedom === 'free'
        ? 'goes in free'
        : `${step.freedom}: ${say.fit(step.shift)} aside, about ${say.units === 'in' ? sayFigure(say, step.forceN, 'N') : `${fixed(step.forceN, 0)} N`}`,
    ]);
    return [
      heading(
        `Stage ${stage.number}: ${stage.joints} joint${stage.joints === 1 ? '' : 's'}, about ${fixed(stage.minutes, 1)} min (${open})`,
      ),
      table(['step', 'bring', 'to', 'moving', 'last stretch', 'how it goes'], rows),
      ...steps.flatMap((step) => panelWords(design, step)),
      ...steps.map(({ id }) => figure({ of: 'glue-up step', step: id })),
      ...(clamps.clamps.some((clamp) => clamp.stage === stage.number)
        ? [figure({ of: 'clamps', stage: stage.number })]
        : []),
    ];
  });
  const stuck = glueUp.conflicts.map(({ boards }) =>
    paragraph(strong(`No way was found to put ${namesOf(design, boards)} together: see the findings.`)),
  );
  const wait =
    glueUp.stages.length > 1
      ? [
          paragraph(
            `Glue one stage after the other: each stays in its clamps ${shop.glue ? `for ${fixed(shop.glue.clampMinutes, 0)} min` : 'as long as the glue needs'} before you begin the next.`,
          ),
        ]
      : [];
  return [...wait, ...told, ...stuck];
}

function diagonalBlocks({ design, diagonals, shop }: GlueUpPaper): readonly Block[] {
  const say = speaker(shop.units);
  if (diagonals.length === 0) return [];
  const rows = diagonals.flatMap(({ stage, between, pairs, tolerance }) =>
    pairs.map(({ from, to, length }) => [
      String(stage),
      namesOf(design, between),
      from.words,
      to.words,
      say.length(length),
      `± ${say.length(tolerance)}`,
    ]),
  );
  return [
    heading('Diagonals to measure before the glue grabs'),
    table(['stage', 'between', 'from', 'to', 'distance', 'within'], rows),
  ];
}

function glueBlocks({ glue, shop }: GlueUpPaper): readonly Block[] {
  const say = speaker(shop.units);
  const inches = say.units === 'in';
  const least = shop.glue?.leastCelsius ?? 0;
  const time = shop.glue
    ? ` Clamp for ${fixed(shop.glue.clampMinutes, 0)} min at ${inches ? `${fixed(32 + 1.8 * least, 0)} °F` : `${fixed(least, 0)} °C`} or warmer.`
    : ' The shop file names no glue: its open time, clamp time and least temperature are not verified.';
  const area = (mm2: number) => (inches ? `${fixed(mm2 / INCH ** 2, 0)} in²` : `${fixed(mm2 / 100, 0)} cm²`);
  const areas = [
    `${area(glue.areaMm2)} of cheeks`,
    ...(glue.seams.length > 0 ? [`${area(glue.seamMm2)} of seams between boards`] : []),
    ...(glue.blanksMm2 > 0 ? [`${area(glue.blanksMm2)} of edge joints in blanks`] : []),
  ];
  return [
    heading('Glue'),
    paragraph(
      `About ${fixed(glue.grams, 1)} g on ${areas.join(', ')} (${fixed(glue.leastGrams, 1)} to ${fixed(glue.mostGrams, 1)} g depending on how you spread it; common practice, from memory).${time}`,
    ),
    paragraph(
      `Spread it thinly on both cheeks of the tenon and of the mortise; none on the ends.${glue.seams.length > 0 ? ` Spread it on the whole seam too, where the grain of both boards runs along it: ${glue.seams.join(', ')}.` : ''}`,
    ),
  ];
}

/** A panel is told of at the step it goes in with, and again where its frame closes on it. */
const panelWords = (
  design: Design,
  { id, panels, joints }: GlueUpPaper['glueUp']['steps'][number],
): readonly Block[] =>
  panels.map((panel) =>
    paragraph(
      joints.length === 0
        ? `${id}: the ${nameOf(design, panel)} goes into its grooves dry: no glue in a groove or on the panel. See that it still slides.`
        : `${id}: the frame closes on the ${nameOf(design, panel)}, which stays dry: no glue in the groove. Wipe off what squeezes out of the joint beside it.`,
    ),
  );

function fixings({ design, glueUp, shop }: GlueUpPaper): readonly Block[] {
  const say = speaker(shop.units);
  if (glueUp.fixings.length === 0) return [];
  const fastenings = new Map((design.fastenings ?? []).map((one) => [one.id, one]));
  const rows = glueUp.fixings.flatMap(({ id, held, to, fastenings: ids, direction }) =>
    to.map((below) => {
      const own = ids.map((one) => fastenings.get(one)!).filter((one) => one.to === below);
      const [first] = own;
      const travels = own.map(({ travel }) => travel);
      return [
        id,
        nameOf(design, held),
        nameOf(design, below),
        moveWords(direction),
        `${own.length} ${first!.by}${own.length === 1 ? '' : 's'}`,
        say.length(Math.max(...travels)),
      ];
    }),
  );
  return [
    heading('Last: held without glue'),
    paragraph(
      'When the glue has set, put these on without glue: the board must be free to move across its grain. Turn each screw until it holds snugly and no farther.',
    ),
    table(['step', 'put', 'on', 'moving', 'hold it by', 'must move'], rows),
  ];
}
