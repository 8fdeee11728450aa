import type { Finding } from '../checks/index.js';
import { fixed, trimmed } from '../length/index.js';
import { type CutRow, cutWords, faceWords, type ShopPapers } from '../shop/index.js';
import type { Solids } from '../solid/index.js';
import { sizeWords } from './cover-page.js';
import { type DrawingUnits, dimensionRows } from './drawing-units.js';
import { type Block, bullet, heading, paragraph, tableBlock } from './flow-block.js';
import { STEP } from './running-steps.js';

type Say = (mm: number) => string;

/** How a length stands in the tables of a plan. */
const sayIn =
  (units: DrawingUnits): Say =>
  (mm) =>
    sizeWords(mm, units);

/** Router, cutters, bits, clamps and the pieces to make first. */
export function toolBlocks(solids: Solids, papers: ShopPapers, units: DrawingUnits): readonly Block[] {
  const say = sayIn(units);
  const { cards, shop, clamps, glue, aids } = papers;
  const { design } = solids;
  const { base, plungeTravel } = shop.router;
  const cutters = [...new Set(cards.map(({ cutter }) => cutter))].map((cutter) => {
    const own = cards.filter((card) => card.cutter === cutter);
    return [
      `straight or up-cut cutter ${say(cutter)}`,
      `mortises of cards ${own.map(({ id }) => id).join(', ')}, to ${say(Math.max(...own.map(({ depth }) => depth)))} deep`,
    ];
  });
  const bushes = [...new Set(cards.flatMap(({ window }) => (window ? [window.bush] : [])))];
  const holes = design.boards.flatMap(({ board }) => board.holes);
  const bits = [
    ...new Set(
      holes.flatMap(({ diameter, counterbore, countersink }) => [
        diameter,
        ...(counterbore ? [counterbore.diameter] : []),
        ...(countersink ? [countersink.diameter] : []),
      ]),
    ),
  ].toSorted((a, b) => a - b);
  const openings = clamps.clamps.map(({ opening }) => opening);
  const most = Math.max(
    0,
    ...clamps.clamps.map(({ stage }) => clamps.clamps.filter((one) => one.stage === stage).length),
  );
  return [
    heading('Tools, cutters and router', 1),
    paragraph(`Worked out for the shop of: ${shop.name}. Another router or jig changes the set-up cards.`),
    tableBlock([
      ['what', 'for'],
      [
        `plunge router, ${base.shape} base ${say(base.along)}${base.along === base.across ? '' : ` × ${say(base.across)}`}`,
        `all mortises${plungeTravel === undefined ? '' : `; plunge travel ${say(plungeTravel)}`}`,
      ],
      ...(cards.some(({ nearRail, farRail }) => nearRail ?? farRail)
        ? [['mortising jig with two rails', 'cards that name a rail']]
        : []),
      ...cutters,
      ...bushes.map((bush) => [`guide bush ${say(bush)}`, 'windowed templates']),
      [`cutter ${say(design.cutter)} with a bearing as wide`, 'outlines and openings along the templates'],
      ...(bits.length > 0
        ? [[`drill bits ${bits.map(say).join(', ')}`, 'holes, counterbores, countersinks']]
        : []),
      ['saw that tilts and mitres, planer or hand planes', 'milling, ends, bevels'],
      ['steel rule, square, marking knife, caliper', 'marks; slot and tenon thickness to 0.05 mm'],
      ...(openings.length > 0
        ? [[`${most} clamps opening ${say(Math.max(...openings))}`, 'glue-up, the most in one stage']]
        : []),
      ...(design.joints.length > 0 ? [[`wood glue, about ${fixed(glue.grams, 0)} g`, 'all joints']] : []),
      ['eye, ear and dust protection', 'every cut'],
    ]),
    ...(aids.length > 0
      ? [
          heading('Make these first'),
          tableBlock([
            ['piece', 'count', 'what it is for', 'thickness × width × length'],
            ...aids.map(({ board, count, purpose, handed }) => [
              board.id,
              `${count}${handed ? ', left and right' : ''}`,
              purpose,
              sizeOf(board.blank, units),
            ]),
          ]),
        ]
      : []),
  ];
}

interface Sizes {
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
}

/** `28 × 240 × 420 mm [1-7/64" × 9-29/64" × 16-17/32"]` */
const sizeOf = ({ thickness, width, length }: Sizes, units: DrawingUnits): string => {
  const rows = [thickness, width, length].map((mm) =>
    dimensionRows({ mm: Math.round(mm / STEP.mm), in: Math.round(mm / STEP.in) }, units),
  );
  const joined = (i: number) => rows.map((row) => row[i]!.replace(/[[\]]/g, '')).join(' × ');
  if (units === 'in') return joined(0);
  return units === 'mm' ? `${joined(0)} mm` : `${joined(0)} mm [${joined(1)}]`;
};

const KINDS: Readonly<Record<CutRow['kind'], string>> = {
  board: 'Boards',
  aid: 'Aids to hold, guide and clamp',
  template: 'Templates',
  'test blank': 'Test blanks',
  'tenon strip': 'Strips for the tenons',
};

/** Cut list rough and finished, what to buy, hardware. */
export function materialBlocks(papers: ShopPapers, units: DrawingUnits): readonly Block[] {
  const say = sayIn(units);
  const { cutList, bills, toBuy, hardware } = papers;
  const kinds = [...new Set(cutList.map(({ kind }) => kind))];
  return [
    heading('Materials', 1),
    paragraph(
      'Thickness × width × length, length along the grain. Saw to the rough size, mill to the finished one. Fit each piece to those already made where it says so.',
    ),
    ...kinds.flatMap((kind) => [
      heading(KINDS[kind]),
      cutTable(
        cutList.filter((row) => row.kind === kind),
        units,
      ),
    ]),
    ...(bills.length > 0
      ? [
          heading('Solid wood to buy, item by item'),
          tableBlock([
            ['wood', 'item', 'm³', 'board feet'],
            ...bills.flatMap(({ material, items, total, verdict }) => [
              ...items.map((item) => [
                material,
                item.what,
                fixed(item.volumeMm3 * 1e-9, 5),
                fixed(item.boardFeet, 2),
              ]),
              [
                `**${material}**`,
                `**${total.what}${verdict === 'passed' ? '' : ' (not verified: the shop file gives no rough allowance)'}**`,
                `**${fixed(total.volumeMm3 * 1e-9, 5)}**`,
                `**${fixed(total.boardFeet, 2)}**`,
              ],
            ]),
          ]),
        ]
      : []),
    ...(toBuy.length > 0
      ? [
          tableBlock([
            ['wood', 'at least thick', 'widest piece', 'longest piece', 'pieces', 'with waste, board feet'],
            ...toBuy.map((one) => [
              one.material,
              say(one.thickness),
              say(one.widest),
              say(one.longest),
              trimmed(one.count, 0),
              fixed(one.boardFeet, 2),
            ]),
          ]),
        ]
      : []),
    heading('Hardware to buy'),
    ...(hardware.length > 0
      ? [tableBlock([['count', 'what'], ...hardware.map(({ count, name }) => [trimmed(count, 0), name])])]
      : [paragraph('None.')]),
  ];
}

function cutTable(rows: readonly CutRow[], units: DrawingUnits): Block {
  const say = sayIn(units);
  const angled = rows.some(({ ends }) => ends !== undefined && ends.ends !== 'square');
  const rough = rows.some((row) => row.rough !== undefined);
  const board = rows[0]?.kind === 'board';
  return tableBlock([
    [
      'mark',
      'count',
      'name',
      'material',
      'finished',
      ...(rough ? ['rough'] : []),
      ...(angled ? ['ends', 'long / short point, centre line'] : []),
      ...(board ? ['cut', 'hand'] : []),
    ],
    ...rows.map((row) => [
      row.marks.join(' '),
      trimmed(row.count, 0),
      row.name,
      row.material,
      sizeOf(row.finished, units),
      ...(rough ? [row.rough ? sizeOf(row.rough.size, units) : 'not verified'] : []),
      ...(angled
        ? row.ends && row.ends.ends !== 'square'
          ? [
              `${row.ends.ends}, ${row.ends.anglesDeg.map((deg) => `${trimmed(deg, 2)}°`).join(' and ')}; set the stop to: ${row.ends.stopTo}`,
              `${say(row.ends.longPoint)} / ${say(row.ends.shortPoint)}, ${say(row.ends.centreLine)}`,
            ]
          : ['square', '']
        : []),
      ...(board
        ? [cutWords(row.cut), row.mirrorOf ? `mirror image of ${row.mirrorOf}` : row.handed ? 'handed' : '']
        : []),
    ]),
  ]);
}

/** Every kind of tenon, the strips they come from, and how a fit is tried. */
export function tenonBlocks(papers: ShopPapers, units: DrawingUnits): readonly Block[] {
  const say = sayIn(units);
  const { tenons, strips } = papers;
  return [
    heading('Tenons', 1),
    tableBlock([
      [
        'mark',
        'count',
        'thickness × width × length',
        'wood',
        'joints',
        'into',
        'air',
        'round edges',
        'grooves',
      ],
      ...tenons.map((kind) => [
        kind.mark,
        trimmed(kind.count, 0),
        `${sizeOf(kind, units)}${kind.slot.verdict === 'passed' ? '' : ' (thickness not verified)'}`,
        kind.material,
        kind.joints.map(({ joint, count }) => `${count} in ${joint}`).join('; '),
        kind.ends.map((end) => `${say(end.into)} of ${say(end.depth)} into ${end.board}`).join('; '),
        `${trimmed(kind.clearance, 2)} mm over both cheeks`,
        `radius ${say(kind.edges.find(({ style }) => style === 'round')?.size ?? 0)}`,
        `${kind.grooves.perCheek} on each cheek, ${trimmed(kind.grooves.width, 1)} × ${trimmed(kind.grooves.depth, 1)} mm`,
      ]),
    ]),
    ...tenons.flatMap((kind) => [
      bullet(`${kind.mark}: ${kind.slot.text}.`),
      ...kind.warnings.map((text) => bullet(text)),
    ]),
    bullet(`A tenon fits when it ${tenons[0]!.fit.go}. It does not when it ${tenons[0]!.fit.noGo}.`),
    bullet(
      'Grain along the length. Make all thicknesses in one setting of the planer, try the test piece first.',
    ),
    heading('Strips'),
    tableBlock([
      ['tenons', 'wood', 'thickness × width', 'strip length', 'cut from it', 'left to hold'],
      ...strips.flatMap((plan) =>
        plan.strips.map((strip) => [
          plan.marks.join(' '),
          plan.material,
          `${say(plan.thickness)} × ${say(plan.width)}`,
          say(strip.length),
          (['tenon', 'spare', 'test piece'] as const)
            .flatMap((use) => {
              const pieces = strip.pieces.filter((piece) => piece.use === use);
              const lengths = [...new Set(pieces.map(({ mark, length }) => `${mark} ${say(length)}`))];
              return lengths.map((one) => {
                const count = pieces.filter(({ mark, length }) => `${mark} ${say(length)}` === one).length;
                return `${count} ${use}${count > 1 ? 's' : ''} ${one}`;
              });
            })
            .join('; '),
          say(strip.left),
        ]),
      ),
    ]),
    paragraph(
      'Mill a strip whole, round its edges and groove it, then cut it apart: short pieces are never planed or routed.',
    ),
  ];
}

/** Arrises that stay sharp and those that are eased, and the finish. Common practice, no source. */
export function finishBlocks(solids: Solids): readonly Block[] {
  const boards = solids.design.boards.map(({ board }) => board);
  const named = (id: string) => boards.find((board) => board.id === id)?.name ?? id;
  const joints = new Map(solids.design.joints.map((joint) => [joint.id, joint]));
  return [
    heading('Finishing', 1),
    heading('Edges to ease'),
    tableBlock([
      ['board', 'leave sharp', 'ease'],
      ...boards.map((board) => {
        const seats = new Map<string, Set<string>>();
        for (const mortise of board.mortises) {
          const joint = joints.get(mortise.joint);
          const other = joint?.a === board.id ? joint.b : joint?.a;
          const face = faceWords(board, mortise.face);
          if (other !== undefined) seats.set(face, (seats.get(face) ?? new Set()).add(named(other)));
        }
        return [
          board.name,
          seats.size === 0
            ? 'none'
            : [...seats]
                .map(
                  ([face, others]) =>
                    `arrises of the ${face} where it meets the ${[...others].join(' and the ')}`,
                )
                .join('; '),
          'all others: 1 mm with sandpaper; 3 mm or more where a hand or a foot reaches, and at openings',
        ];
      }),
    ]),
    heading('Finish'),
    ...[
      'Ease feet on their lower arrises too, or they splinter when the piece is dragged.',
      'Wait 3 to 7 days after the glue-up before the last sanding at a joint: the glue swells the wood, and what is flush too soon sinks later.',
      'Take pencil marks and dried glue off before the finish; graphite in a joint goes before the glue.',
      'On a step use a matt finish, with fine sand in the last coat on the tread: gloss is slippery in socks.',
      'Let an oil or film finish cure as its label says, about 30 days for most, before children use the piece. Lay oily rags flat outdoors to dry.',
    ].map(bullet),
    paragraph('Common practice, no source.'),
  ];
}

/** What the checks found, with the basis of each. */
export function checkBlocks(
  findings: readonly Finding[],
  checks: readonly string[],
  papers: ShopPapers,
): readonly Block[] {
  const doubtful = papers.cards.flatMap((card) =>
    card.figures
      .filter(({ verdict }) => verdict !== 'passed')
      .map((figure) => [card.id, figure.name, figure.verdict, figure.text]),
  );
  const count = (level: Finding['level']) => findings.filter((one) => one.level === level).length;
  return [
    heading('Results of the checks', 1),
    paragraph(`Checked on the solids: ${checks.join(', ')}.`),
    paragraph(
      `${count('error')} errors, ${count('warning')} warnings, ${count('note')} notes. What is not listed was checked and found good.`,
    ),
    ...(findings.length > 0
      ? [
          tableBlock([
            ['level', 'what was found', 'what to do', 'basis'],
            ...findings.map(({ level, message, remedy, basis }) => [
              level === 'error' ? '**error**' : level,
              message,
              remedy,
              basis,
            ]),
          ]),
        ]
      : []),
    ...(doubtful.length > 0
      ? [
          heading('Not verified for this shop'),
          tableBlock([['card', 'figure', 'verdict', 'why'], ...doubtful]),
        ]
      : []),
  ];
}
