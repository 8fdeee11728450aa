import { fixed } from '../../length/index.js';
import type { ShopPapers, WorkKind } from '../../shop/index.js';
import { type DrawingUnits, sayTool } from '../sheet/index.js';

/** Minutes at the bench for each step of a kind, without the glue's own time. Rule of thumb: common practice, no source. */
const MINUTES: Partial<Readonly<Record<WorkKind, number>>> = {
  template: 45,
  aid: 45,
  'test blank': 15,
  'edge joint': 25,
  mill: 20,
  'test cut': 25,
  mortise: 12,
  'cut ends': 15,
  outline: 20,
  opening: 20,
  strip: 20,
  tenons: 30,
  'dry fit': 20,
  'dry assembly': 30,
  'glue-up': 40,
  finish: 60,
};

const OTHER_MINUTES = 10;

/** For the cover: how hard it is, how long it takes, and what must be there, each as a name and its words. */
export function jobWords(papers: ShopPapers, units: DrawingUnits): readonly (readonly [string, string])[] {
  const { order, cards, bills, cutList, clamps, templates, glue } = papers;
  const angled = cutList.some(({ kind, ends }) => kind === 'board' && ends && ends.ends !== 'square');
  const turned = cards.some(({ cuts }) => cuts.some(({ marked }) => marked));
  const hard = [
    ...(angled ? ['ends sawn at an angle'] : []),
    ...(templates.length > 0 ? ['outlines routed to templates'] : []),
    ...(turned ? ['mortises turned to the grain'] : []),
  ];
  const hours = order.steps.reduce((sum, { kind }) => sum + (MINUTES[kind] ?? OTHER_MINUTES), 0) / 60;
  const most = Math.max(
    0,
    ...clamps.clamps.map(({ stage }) => clamps.clamps.filter((one) => one.stage === stage).length),
  );
  const cutters = [...new Set(cards.map(({ cutter }) => cutter))].map(sayTool(units));
  return [
    [
      'Skill',
      hard.length === 0
        ? 'a first piece: square ends and straight cuts'
        : `${hard.length > 2 ? 'experienced' : 'some experience'}: ${hard.join(', ')}`,
    ],
    [
      'Time',
      `about ${fixed(Math.ceil(hours), 0)} hours at the bench, and the days that glue and finish take (rule of thumb)`,
    ],
    [
      'Tools',
      [
        ...(cards.length > 0 ? [`plunge router with a cutter of ${cutters.join(' and ')}`] : []),
        ...(cards.some(({ nearRail, farRail }) => nearRail ?? farRail) ? ['the mortising jig'] : []),
        `a saw${angled ? ' that tilts and mitres' : ''}, planes, square, rule, caliper`,
        ...(most > 0 ? [`${most} clamps`] : []),
      ].join('; '),
    ],
    [
      'Wood',
      [
        ...bills.map(
          ({ material, total }) => `${fixed(total.boardFeet, 1)} board feet of ${material}, waste and all`,
        ),
        ...(glue.grams > 0 ? [`about ${fixed(glue.grams, 0)} g of wood glue`] : []),
      ].join('; '),
    ],
  ];
}
