import type { Design } from '../../assembly/index.js';
import type { Groove } from '../../board/index.js';
import { PRACTICE } from '../../joinery/index.js';
import type { Say } from '../../length/index.js';
import { type GrooveCard, grooveCards, type Shop } from '../../shop/index.js';
import { boxIn, gap, grooveCutter, type MortiseMeasure } from '../../solid/index.js';
import { SIZED_TO_LIMIT } from '../../tolerances.js';
import type { Bench } from '../bench/index.js';
import { COMMON_PRACTICE, type Finding, MEASURED } from '../finding/index.js';

/** Wood stands between every groove and the mortises of its board. */
export const grooves = (bench: Bench): readonly Finding[] => [
  ...uncut(bench),
  ...bench.tenons.flatMap(({ tenon, mortises }) =>
    mortises
      // the wall is to all other air, so that of a groove is no thinner
      .filter(({ wall }) => wall < PRACTICE.wall - SIZED_TO_LIMIT)
      .flatMap((mortise) =>
        bench.solids.boards
          .get(mortise.board)!
          .board.grooves.flatMap((groove) => near(bench, tenon.id, mortise, groove)),
      ),
  ),
];

/** Grooves the router and cutters at hand cannot cut. */
const uncut = ({ held, solids, say }: Bench): readonly Finding[] =>
  (held ? grooveCards(solids.design, held.shop) : []).flatMap((card) =>
    card.figures
      .filter(({ verdict }) => verdict === 'failed')
      .map(({ name, needed, available = 0, text }): Finding => {
        const boards = [...new Set(card.cuts.map(({ board }) => board))];
        return {
          code: 'groove-not-cut',
          level: 'error',
          subjects: boards,
          measured: available,
          limit: needed,
          unit: 'mm',
          message: `the tools at hand cannot cut the ${card.kind}s in ${boards.join(', ')}: ${name}: ${text}`,
          remedy:
            name === 'cutter for the groove'
              ? widthRemedy(card, solids.design, held!.shop, say)
              : 'make the groove shallower or nearer to its fence, or give the shop file a tool that reaches',
          basis: 'the shop file',
        };
      }),
  );

/** The groove of a panel follows its thickness: what is changed is the panel. */
function widthRemedy(card: GrooveCard, { captives = [] }: Design, { cutters }: Shop, say: Say): string {
  const sits = captives.find(({ grooves: own }) =>
    own.some(({ board, groove }) => card.cuts.some((cut) => cut.board === board && cut.groove === groove)),
  );
  const [nearest] = cutters
    .map(({ nominal }) => nominal)
    .toSorted((a, b) => Math.abs(a - card.width) - Math.abs(b - card.width));
  const narrower = 'make the groove as wide as a cutter at hand, or add the cutter to the shop file';
  if (!sits || nearest === undefined) return narrower;
  return `make ${sits.panel} ${say.fine(nearest - sits.fit)} thick, so that its grooves are as wide as the ${say.length(nearest)} cutter, or add another cutter to the shop file`;
}

function near(
  bench: Bench,
  tenon: string,
  { board: id, cavity: found }: MortiseMeasure,
  groove: Groove,
): Finding[] {
  const { solids, say } = bench;
  const { kernel } = solids;
  const solid = solids.boards.get(id)!;
  const cavity = found.body();
  const cutter = grooveCutter(kernel, solid.board, groove);
  const wall = gap(cavity, cutter, PRACTICE.wall + 1);
  cutter.delete();
  if (wall >= PRACTICE.wall - SIZED_TO_LIMIT) return [];
  // along the groove: how far from either end it would have to stop
  const room = boxIn(cavity, groove.at);
  const whole = boxIn(solid.stock, groove.at);
  const stops = [
    { end: 'start', at: room.max[0] + PRACTICE.wall - whole.min[0] },
    { end: 'end', at: whole.max[0] - room.min[0] + PRACTICE.wall },
  ] as const;
  const [nearer] = stops.toSorted((a, b) => a.at - b.at);
  const [left, least] = say.fines(wall, PRACTICE.wall);
  const ends = nearer!.at < (whole.max[0] - whole.min[0]) / 2;
  return [
    {
      code: wall === 0 ? 'groove-meets-mortise' : 'groove-near-mortise',
      level: wall === 0 ? 'error' : 'warning',
      subjects: [id, tenon],
      measured: wall,
      limit: PRACTICE.wall,
      unit: 'mm',
      message:
        wall === 0
          ? `groove ${groove.id} of ${id} runs into the mortise for tenon ${tenon}`
          : `groove ${groove.id} of ${id} leaves ${left} of wood beside the mortise for tenon ${tenon}; it should leave at least ${least}`,
      remedy: ends
        ? `stop the groove at least ${say.fine(Math.ceil(nearer!.at * 10) / 10)} before its ${nearer!.end} (stop.${nearer!.end})`
        : 'move the joint off the groove, or move the groove or cut it shallower',
      basis: wall === 0 ? MEASURED : COMMON_PRACTICE,
    },
  ];
}
