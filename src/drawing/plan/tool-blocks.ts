import { fixed, printAngle, printFit, rulesOf } from '../../length/index.js';
import { type Block, heading, paragraph, type ShopPapers, table } from '../../shop/index.js';
import type { Solids } from '../../solid/index.js';
import { type DrawingUnits, sayIn, sayTool } from '../sheet/index.js';

/** How finely a fit is measured, mm: common practice, no source. */
const FIT_READ = 0.05;

/** Router, cutters, bits, clamps and the pieces to make first. */
export function toolBlocks(solids: Solids, papers: ShopPapers, units: DrawingUnits): readonly Block[] {
  const [say, tool] = [sayIn(units), sayTool(units)];
  const { cards, shop, clamps, glue, templates, bush } = papers;
  const { design } = solids;
  const { base, plungeTravel } = shop.router;
  const flats = Object.entries(base.flats ?? {}).map(([side, at]) => `${side} ${say(at)}`);
  const cutters = [...new Set(cards.map(({ cutter }) => cutter))].map((cutter) => {
    const own = cards.filter((card) => card.cutter === cutter);
    return [
      `straight or up-cut cutter ${tool(cutter)}`,
      `mortises of cards ${own.map(({ id }) => id).join(', ')}, to ${say(Math.max(...own.map(({ depth }) => depth)))} deep`,
    ];
  });
  const bushes = [...new Set(cards.flatMap(({ window }) => (window ? [window.bush] : [])))];
  const holes = design.boards.flatMap(({ board }) => board.holes);
  const bits = [
    ...new Set(
      holes.flatMap(({ diameter, counterbore }) => [
        diameter,
        ...(counterbore ? [counterbore.diameter] : []),
      ]),
    ),
  ].toSorted((a, b) => a - b);
  const sinks = holes.flatMap(({ countersink }) => countersink ?? []);
  const sinkRows = [...new Set(sinks.map(({ angleDeg }) => angleDeg))].map((angleDeg) => [
    `countersink ${printAngle(angleDeg)}, at least ${say(Math.max(...sinks.filter((one) => one.angleDeg === angleDeg).map(({ diameter }) => diameter)))} across`,
    'heads of screws below a face',
  ]);
  const openings = clamps.clamps.map(({ opening }) => opening);
  const most = Math.max(
    0,
    ...clamps.clamps.map(({ stage }) => clamps.clamps.filter((one) => one.stage === stage).length),
  );
  return [
    heading('Tools, cutters and router', 1),
    paragraph(`Worked out for this shop: ${shop.name}. A different router or jig changes the set-up cards.`),
    table(
      ['what', 'for'],
      [
        [
          `plunge router, ${base.shape} base ${say(base.along)}${base.along === base.across ? '' : ` × ${say(base.across)}`}${flats.length > 0 ? `, flats ${flats.join(', ')} from the cutter` : ''}`,
          `all mortises${plungeTravel === undefined ? '' : `; plunge travel ${say(plungeTravel)}`}`,
        ],
        ...(cards.some(({ nearRail, farRail }) => nearRail ?? farRail)
          ? [['mortising jig with two rails', 'cards that name a rail']]
          : []),
        ...cutters,
        ...bushes.map((bush) => [`guide bush ${tool(bush)}`, 'windowed templates']),
        ...(templates.length > 0
          ? [
              [
                `cutter ${tool(design.cutter)} ${bush === undefined ? 'with a bearing as wide' : `in a guide bush ${tool(bush)}`}, cutting edges at least ${say(Math.max(...templates.map(({ cuts }) => cuts)))} long`,
                'outlines and openings along the templates',
              ],
            ]
          : []),
        ...(bits.length > 0 ? [[`drill bits ${bits.map(tool).join(', ')}`, 'holes, counterbores']] : []),
        ...sinkRows,
        ['saw that tilts and mitres, planer or hand planes', 'milling, ends, bevels'],
        [
          'steel rule, square, marking knife, caliper',
          `marks; slot and tenon thickness to ${printFit(FIT_READ, { units: rulesOf(units)[0]! })}`,
        ],
        ...(openings.length > 0
          ? [[`${most} clamps opening ${say(Math.max(...openings))}`, 'glue-up, the most in one stage']]
          : []),
        ...(design.joints.length > 0 ? [[`wood glue, about ${fixed(glue.grams, 0)} g`, 'all joints']] : []),
        ['eye, ear and dust protection', 'every cut'],
      ],
    ),
  ];
}
