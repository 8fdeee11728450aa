import fc from 'fast-check';

/** Sides by direction: left to right, front to back, up. */
const ACROSS = [
  ['left', 'right', 'left', 'right'],
  ['front', 'back', 'front', 'back'],
  ['bottom', 'top', 'down', 'up'],
] as const;
const GRAINS = ['left-right', 'front-back', 'up'] as const;

const of = fc.constantFrom;
const mm = (least: number, most: number) => fc.integer({ min: least, max: most });

/** Mostly the first, one time in so many the second. */
const mostly = <T>(usual: fc.Arbitrary<T>, odd: fc.Arbitrary<T>, oneIn = 4) =>
  fc.oneof({ weight: oneIn - 1, arbitrary: usual }, { weight: 1, arbitrary: odd });

const sides = of('left', 'right', 'front', 'back', 'bottom', 'top');

/** `20 short of left of side`; `axis` for a side that looks along it. */
const place = (names: readonly string[], axis?: number): fc.Arbitrary<string> =>
  fc
    .tuple(
      mostly(of(''), mm(0, 60).map(String), 2),
      axis === 0 || axis === 1 ? of('short of', 'past') : of('short of', 'past', 'above', 'below'),
      mostly(of(''), axis === undefined ? sides : of(ACROSS[axis]![0], ACROSS[axis]![1]), 2),
      of(...names),
    )
    .map(([measure, word, side, name]) =>
      [measure && `${measure} ${word}`, side && `${side} of`, name].filter(Boolean).join(' '),
    );

const shapes: fc.Arbitrary<string> = fc.oneof(
  fc
    .tuple(sides, mm(5, 60), of('top', 'bottom', 'left', 'front'))
    .map(([side, to, at]) => `taper: { sides: ${side}, to: ${to}, at: ${at} }`),
  fc
    .tuple(sides, mm(5, 60), mm(0, 80))
    .map(([side, high, feet]) => `arch: { side: ${side}, high: ${high}, feet: ${feet} }`),
  fc
    .tuple(sides, sides, mm(5, 80), mm(5, 80))
    .map(([a, b, long, deep]) => `notch: { corner: ${a} ${b}, long: ${long}, deep: ${deep} }`),
  fc
    .tuple(of('corner', 'arris'), sides, sides, mm(3, 50), mm(3, 50))
    .map(([what, a, b, long, deep]) => `bevel: { ${what}: ${a} ${b}, long: ${long}, deep: ${deep} }`),
  mm(2, 80).map((radius) => `round: { corners: all, radius: ${radius} }`),
  fc.tuple(mm(10, 120), mm(10, 60)).map(([long, wide]) => `opening: { long: ${long}, wide: ${wide} }`),
  fc
    .tuple(sides, mm(3, 15), mm(2, 15))
    .map(([side, wide, deep]) => `groove: { side: ${side}, wide: ${wide}, deep: ${deep} }`),
  fc
    .tuple(sides, mm(2, 12), mm(3, 60), mm(10, 90))
    .map(
      ([side, wide, deep, every]) =>
        `holes: { side: ${side}, wide: ${wide}, deep: ${deep}, every: ${every} }`,
    ),
  fc
    .tuple(sides, sides, mm(0, 60), mm(0, 60))
    .map(
      ([side, towards, from, to]) =>
        `slope: { side: ${side}, towards: ${towards}, from: ${from} short of piece, to: ${to} short of piece }`,
    ),
);

const angle = fc
  .tuple(of('left', 'right', 'front', 'back'), mm(0, 14))
  .map(([side, deg]) => `{ ${side}: ${deg}° }`);

const extras = (names: readonly string[]): fc.Arbitrary<string> =>
  fc.oneof(
    { weight: 4, arbitrary: shapes },
    of('left-right', 'front-back', 'up-down', 'left-right and front-back').map((of) => `mirrored: ${of}`),
    fc
      .tuple(mm(1, 4), place(names), place(names))
      .map(([count, a, b]) => `repeat: ${count}, evenly: from ${a} to ${b}`),
    angle.map((one) => `leans: ${one}`),
    angle.map((one) => `slopes: ${one}`),
    fc
      .tuple(mm(2, 5), of(...names))
      .map(([copies, middle]) => `around: { middle: ${middle}, copies: ${copies}, first: front }`),
    mm(2, 4).map((count) => `staves: ${count}`),
    mm(4, 12).map((deep) => `grooved: ${deep}`),
    of('step', 'seat', 'table top', 'shelf', 'none').map((use) => `use: ${use}`),
    of('width > 400', 'lid').map((when) => `when: ${when}`),
    of('plumb: yes', 'wood: black walnut', 'wood: birch plywood'),
  );

/** One board below the others: in each direction enough is said, or now and then too much or too little. */
const board = (name: string, above: readonly string[]): fc.Arbitrary<string> =>
  mm(0, 2).chain((grain) => {
    const [face, edge] = [0, 1, 2].filter((axis) => axis !== grain) as [number, number];
    const names = [...above, 'piece'];
    const [low, high] = [ACROSS[grain]![0], ACROSS[grain]![1]];
    const size = (key: string, axis: number, most: number) => {
      const [one, other] = [ACROSS[axis]![0], ACROSS[axis]![1]];
      return fc
        .tuple(mm(12, most), of(one, other), place(names, axis))
        .map(([long, side, at]) => `${key}: ${long}, ${side}: ${at}`);
    };
    const along =
      grain === 0 && above.length > 0
        ? mostly(of('between: left side and right side'), size('long', grain, 400))
        : mostly(of(`${low}: piece, ${high}: piece`), size('long', grain, 400));
    return fc
      .tuple(
        of(ACROSS[face]![2], ACROSS[face]![3]),
        along,
        mostly(size('wide', edge, 160), of('')),
        mostly(size('thick', face, 45), of('')),
        mostly(of<string[]>([]), fc.array(extras(names), { minLength: 1, maxLength: 2 }), 2),
        mostly(
          of('like: piece'),
          of(...names).map((like) => `like: ${like}`),
        ),
      )
      .map(([looks, ends, wide, thick, more, like]) => {
        const parts = [`grain: ${GRAINS[grain]}`, `face: ${looks}`, ends, wide, thick, like, ...more].filter(
          Boolean,
        );
        // a key said twice is refused by the reader of YAML already
        const once = [
          ...new Map(
            parts
              .join(', ')
              .split(/, (?=[a-z]+:)(?![^{]*\})/)
              .map((part) => [part.split(':')[0], part]),
          ).values(),
        ];
        return `  ${name}: { ${once.join(', ')} }`;
      });
  });

const NAMES = ['shelf', 'rail', 'post', 'top board'] as const;

/** What stands on both sides of every piece, now and then leaning. */
const SIDE = mostly(
  of(''),
  angle.map((one) => `, leans: ${one}, head: { left: piece }`),
).map(
  (leans) =>
    `  side: { grain: up, face: left${leans || ', left: piece'}, thick: 22, like: piece, mirrored: left-right }`,
);

const joint = (names: readonly string[]) =>
  fc
    .tuple(
      of(...names),
      mostly(of('side'), of(...names), 8),
      fc.array(
        fc.oneof(
          mm(1, 4).map((count) => `tenons: ${count}`),
          mm(0, 60).map((inset) => `inset: ${inset}`),
          mm(5, 80).map((wide) => `wide: ${wide}`),
          of(6, 8, 12).map((cutter) => `cutter: ${cutter}`),
          of('mitred: yes', 'turned: yes', 'runs: square', 'rows: 2', 'meet: butt', 'meet: mitre'),
        ),
        { maxLength: 2 },
      ),
    )
    .map(
      ([a, b, options]) =>
        `  ${a} to ${b}: { ${[...new Map(options.map((one) => [one.split(':')[0], one])).values()].join(', ')} }`,
    );

/** The file of a piece told at random in words the notation knows; many of them cannot be built. */
export const randomPiece: fc.Arbitrary<string> = mm(1, NAMES.length)
  .chain((count) =>
    fc.tuple(
      SIDE,
      fc.tuple(...NAMES.slice(0, count).map((name, i) => board(name, ['side', ...NAMES.slice(0, i)]))),
      fc.uniqueArray(joint(NAMES.slice(0, count)), { maxLength: 2, selector: (line) => line.split(':')[0] }),
      mostly(of(''), of('held:\n  shelf to side: { by: buttons }\n'), 6),
      of('', 'used by: { heaviest: 90 kg, children: lid }\n'),
    ),
  )
  .map(
    ([side, boards, joints, held, users]) => `design: drawn
wood: white ash
piece: [width, 300, 500]
dimensions:
  width: 420 from 300 to 600; Outside
  lid: yes; With a lid
boards:
${side}
${boards.join('\n')}
${joints.length > 0 ? `joints:\n${joints.join('\n')}\n` : ''}${held}${users}`,
  );
