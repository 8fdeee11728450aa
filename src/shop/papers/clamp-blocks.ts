import type { Design } from '../../assembly/index.js';
import { dot, length, scale, subtract } from '../../frame/index.js';
import { type Say, speaker } from '../../length/index.js';
import type { Clamp, ClampPlan, PadUse } from '../clamps/index.js';
import { leanWords, mostlyWords } from '../glue-up/index.js';
import { GLUE_UP_PRACTICE } from '../practice/index.js';
import { alikeRows, type Block, faceWords, heading, list, table } from '../words/index.js';
import { nameOf } from './board-names.js';
import type { ShopPapers } from './shop-papers.js';

/** What is wanting when no clamp at hand is left for a place. */
const WANTS = { opening: 'none opens so far', throat: 'none reaches in so far', count: 'too few' } as const;

/** The clamps of every stage with their pads, and what to mind when they are put on. */
export function clampBlocks({
  design,
  clamps,
  shop,
}: Pick<ShopPapers, 'clamps' | 'shop'> & { readonly design: Design }): readonly Block[] {
  const say = speaker(shop.units);
  const several = new Set(clamps.clamps.map(({ stage }) => stage)).size > 1;
  const rows = clamps.clamps.map((clamp) => [
    clamp.id,
    several ? String(clamp.stage) : '',
    nameOf(design, clamp.rail),
    clamp.ends.map((end) => `${nameOf(design, end.board)}, ${faceOf(design, end)}`).join(' to '),
    say.length(clamp.opening),
    say.length(clamp.throat),
    clamp.ends.map(({ pad }) => padWords(pad)).join(', '),
    clamp.wants ? `${clamp.verdict}: ${WANTS[clamp.wants]}` : clamp.verdict === 'passed' ? '' : clamp.verdict,
  ]);
  const atHand = rows.every((row) => row.at(-1) === '') ? ['Every clamp of the table is at hand.'] : [];
  const loose = clamps.unclamped.map(
    ({ stage, joint }) =>
      `Stage ${stage}: no clamp bears flat on both sides of ${joint}: hold it with tape, a strap or your hands.`,
  );
  const pads = clamps.pads.map((pad) => {
    const kept = pad.offcuts.find(({ serves }) => serves);
    const from = kept
      ? `make them; the offcut of the ${nameOf(design, kept.board)} at ${faceOf(design, { board: kept.board, face: kept.cut })} has this angle and can stand in for one: saw its sharp end off where it is ${say.length(GLUE_UP_PRACTICE.padThickness)} thick, because a thinner end crumbles`
      : pad.offcuts.length > 0
        ? 'the offcuts with this angle are too small: make them'
        : 'make them';
    return `${pad.board.id}, ${pad.count} pieces: ${pad.purpose}; ${from}.`;
  });
  const wedged = clamps.clamps.some(({ ends }) => ends.some(({ pad }) => pad.angleDeg > 0));
  const lie = wedged
    ? [
        'Lay each wedge with its thick end the way the table says, seen from the front of the piece: its outer face is then square to the bar.',
      ]
    : [];
  const failed = clamps.clamps.some(({ verdict }) => verdict === 'failed')
    ? [
        'Where the table says failed, no clamp at hand is left that does it: borrow or buy one before you open the glue, or draw that joint closed with a strap.',
      ]
    : [];
  const items = [
    ...atHand,
    ...failed,
    ...loose,
    ...pairWords(clamps, say),
    ...barWords(clamps),
    ...lie,
    ...pads,
    ...offWords(clamps, say),
  ];
  return [
    heading('Clamps'),
    ...(rows.length > 0
      ? [
          table(
            [
              'clamp',
              'stage',
              'squeezes',
              'jaws on',
              'opening with pads',
              'throat at least',
              'pads',
              'at hand',
            ],
            alikeRows(rows),
          ),
        ]
      : []),
    ...(items.length > 0 ? [list(items)] : []),
  ];
}

/** A wedge under a jaw rises along the x of its place. */
const padWords = ({ aid, angleDeg, place }: PadUse): string =>
  angleDeg === 0 ? aid : `${aid}, thick end ${mostlyWords(place.x)}`;

/** Where two clamps share a joint; one alone stands at its middle. */
const pairWords = ({ clamps }: ClampPlan, say: Say): readonly string[] => {
  const sets = new Map<string, Clamp[]>();
  for (const clamp of clamps) {
    const key = `${clamp.stage} ${clamp.joints.join()}`;
    sets.set(key, [...(sets.get(key) ?? []), clamp]);
  }
  const pairs = new Map<string, (readonly Clamp[])[]>();
  for (const set of sets.values()) {
    const [one, other] = set;
    const places = other ? `${say.length(linesApart(one!, other))} apart, evenly about` : 'at';
    pairs.set(places, [...(pairs.get(places) ?? []), set]);
  }
  return [...pairs].map(
    ([places, alike]) =>
      `${alike.map((set) => set.map(({ id }) => id).join(' and ')).join('; ')}: ${places} the middle of the joint.`,
  );
};

/** Bars that follow a leaning board. */
const barWords = ({ clamps }: ClampPlan): readonly string[] => {
  const leans = new Map<string, string[]>();
  for (const { id, direction } of clamps) {
    const words = leanWords(direction);
    if (words !== undefined) leans.set(words, [...(leans.get(words) ?? []), id]);
  }
  return [...leans].map(
    ([words, ids]) =>
      `${ids.join(', ')}: ${ids.length === 1 ? 'the bar leans with the board it squeezes: it runs' : 'the bars lean with the boards they squeeze: they run'} ${words}.`,
  );
};

/** Between the lines of two clamps that pull the same way, mm. */
const linesApart = (one: Clamp, other: Clamp): number => {
  const between = subtract(other.through, one.through);
  return length(subtract(between, scale(one.direction, dot(between, one.direction))));
};

const faceOf = (design: Design, { board, face }: { board: string; face: string }): string => {
  const found = design.boards.find((placed) => placed.board.id === board)?.board;
  return found ? faceWords(found, face) : face;
};

const offWords = (clamps: ClampPlan, say: Say): readonly string[] =>
  clamps.offsets
    .filter(({ verdict }) => verdict !== 'passed')
    .map(
      ({ stage, joint, offset }) =>
        `Stage ${stage}: the clamps of ${joint} pull ${say.length(offset)} off its middle; shift them, or the boards swing.`,
    );
