// biome-ignore-all lint/suspicious/noTemplateCurlyInString: the code of the program is quoted
/**
 * Small faults a hand could slip in: a sign, a side, a word, a factor. Each names the tests that must see it.
 *
 * @type {readonly { name: string, file: string, from: string, to: string, tests: readonly string[] }[]}
 */
export const FAULTS = [
  // words and figures of the set-up
  ...faults(
    'src/shop/set-up/feed.ts',
    ['tests/shop/steering-words.test.ts', 'tests/shop/setup-cards.test.ts'],
    [
      ['feed: the cutter turns the other way', 'SPIN: Vec3 = [0, 0, -1]', 'SPIN: Vec3 = [0, 0, 1]'],
      ['feed: the push points the other way', 'scale(cross(SPIN, feed), -1)', 'cross(SPIN, feed)'],
      [
        'feed: left and right exchanged',
        "(which === 'away') ? 'from left to right'",
        "(which !== 'away') ? 'from left to right'",
      ],
      [
        'feed: of one rail, near taken for far',
        "const side = near === undefined && far !== undefined ? 'far' : 'near';",
        "const side = near === undefined && far !== undefined ? 'near' : 'far';",
      ],
      [
        'feed: of one rail, pressed away and not towards',
        "feedPressing(side === 'near' ? 'away' : 'towards')",
        "feedPressing(side === 'near' ? 'towards' : 'away')",
      ],
      [
        'feed: the rail on the wrong side of the work',
        "the rail ${side === 'near' ? 'on your side of the work'",
        "the rail ${side === 'far' ? 'on your side of the work'",
      ],
      [
        'feed: of a guide board, pressed towards the person',
        "`${feedPressing('away')} only, the guide board",
        "`${feedPressing('towards')} only, the guide board",
      ],
      [
        'feed: the guide board on the near side',
        'the guide board beyond the router',
        'the guide board on your side of the router',
      ],
      [
        'feed: of an edge guide, reversed',
        "and feed ${feedPressing('away')} only: the cut then pulls the fence",
        "and feed ${feedPressing('towards')} only: the cut then pulls the fence",
      ],
      [
        'feed: edge guide turned away from the person',
        'turn the work until that edge is towards you',
        'turn the work until that edge is away from you',
      ],
      [
        'feed: of both rails, reversed',
        "`${feedPressing('away')}, the near rail",
        "`${feedPressing('towards')}, the near rail",
      ],
    ],
  ),
  ...faults(
    'src/shop/set-up/card-words.ts',
    ['tests/shop/steering-words.test.ts', 'tests/shop/setup-cards.test.ts'],
    [
      [
        'wedge: thick end down and not up',
        "z > 0 ? 'up, towards the router' : 'down'",
        "z < 0 ? 'up, towards the router' : 'down'",
      ],
      [
        'wedge: thick end left and not right',
        "x > 0 ? 'to your right' : 'to your left'",
        "x < 0 ? 'to your right' : 'to your left'",
      ],
      [
        'zero: on another face',
        'map(({ board, face }) => faceWords(board, face))',
        "map(({ board }) => faceWords(board, 'reference-edge'))",
      ],
      ['caution: short piece where the piece is long', '...(shortPiece ?', '...(!shortPiece ?'],
      ['correction: towards the farther wall', 'towards the nearer wall', 'towards the farther wall'],
      [
        'correction: of a guide, towards the face',
        'away from the face when it is too little',
        'towards the face when it is too little',
      ],
      [
        'correction: of one rail, reversed',
        'towards the cutter when the wall is too thick, away when it is too thin',
        'away from the cutter when the wall is too thick, towards it when it is too thin',
      ],
      [
        'correction: the difference of the walls reversed',
        'const difference = near - far;',
        'const difference = far - near;',
      ],
    ],
  ),
  ...faults(
    'src/shop/set-up/passes.ts',
    ['tests/shop/passes.test.ts', 'tests/shop/steering-words.test.ts'],
    [
      ['passes: as deep as the cutter is wide', 'const PASS_SHARE = 1 / 2;', 'const PASS_SHARE = 1;'],
      ['passes: turret steps counted from 0', 'turretStep: at + 1', 'turretStep: at'],
      ['passes: turret steps from the deepest', '.toReversed();', ';'],
      ['passes: the spacer as thick as the pass is deep', '* (count - i)) / count }', '* i) / count }'],
      ['plunges: one bite too few', 'const bites = Math.ceil(', 'const bites = Math.floor('],
    ],
  ),
  ...faults(
    'src/shop/set-up/card-cut.ts',
    [
      'tests/shop/setup-cards.test.ts',
      'tests/checks/turned.test.ts',
      'tests/shop/steering-words.test.ts',
      'tests/shop/order-of-work.test.ts',
      'tests/shop/aids.test.ts',
    ],
    [
      [
        'card: ends off by half a width',
        'const half = mortise.length / 2;',
        'const half = (mortise.length - mortise.width) / 2;',
      ],
      [
        "card: guide's edge on the other side",
        'guide.side === across.side ? -guide.offset : guide.offset',
        'guide.side === across.side ? guide.offset : -guide.offset',
      ],
      [
        'card: horns counted on finished ends',
        "stage === 'milled blank' ? horns : []",
        "stage !== 'milled blank' ? horns : []",
      ],
    ],
  ),
  ...faults(
    'src/shop/set-up/test-blanks.ts',
    ['tests/shop/cut-list.test.ts'],
    [
      ['test blank: one cut where a wedge wants two', '[length, length] : [length]', '[length] : [length]'],
      [
        'test blank: shorter than the saw may be given',
        'Math.max(STOCK_PRACTICE.stripLength, shop.shortest.saw ?? 0)',
        'STOCK_PRACTICE.stripLength',
      ],
    ],
  ),
  // holding
  ...faults(
    'src/shop/holding/wedge.ts',
    ['tests/shop/steering-words.test.ts', 'tests/shop/aids.test.ts', 'tests/shop/holdings-of.test.ts'],
    [
      ['wedge: up is down', 'up: WORLD.z,', 'up: scale(WORLD.z, -1),'],
      ['wedge: end is start', 'end: WORLD.x,', 'end: scale(WORLD.x, -1),'],
      ['wedge: tapered the other way', '[0, -sine, cosine]', '[0, sine, cosine]'],
      [
        'wedge: on the wrong side of the work',
        "bearing.side === 'near' ? -1 : 1",
        "bearing.side === 'near' ? 1 : -1",
      ],
      ['wedge: sine for tangent', '* Math.tan(angle);', '* Math.sin(angle);'],
    ],
  ),
  ...faults(
    'src/shop/holding/rail-limits.ts',
    ['tests/shop/holding-limits.test.ts'],
    [
      [
        'rail: reach not looked at',
        'bearing.toRail > rail.most + LIMIT_ROUNDING',
        'bearing.toRail > 2 * rail.most',
      ],
      [
        'rail: slots lengthened by half of what is short',
        '2 * (bearing.toRail - rail.most)',
        'bearing.toRail - rail.most',
      ],
      ['rail: air to the cutter forgotten', 'mortise.width / 2 + rail.cutterAir', 'mortise.width / 2'],
      ['grip: too narrow not looked at', 'gap < jig.grip.least - LIMIT_ROUNDING', 'gap < 0'],
    ],
  ),
  ...faults(
    'src/shop/holding/tool-limits.ts',
    ['tests/shop/holding-limits.test.ts'],
    [
      [
        'tools: plunge without the plate',
        'const below = through + mortise.depth;',
        'const below = mortise.depth;',
      ],
      [
        'tools: a shank as thick as the cutter does not rub',
        'cutter.shank >= cutter.nominal',
        'cutter.shank > cutter.nominal + 1',
      ],
    ],
  ),
  // order of work
  ...faults(
    'src/shop/order/end-cuts.ts',
    ['tests/shop/order-words.test.ts', 'tests/shop/order-of-work.test.ts'],
    [
      ['ends: long and wide exchanged', "end ? 'long' : 'wide'", "end ? 'wide' : 'long'"],
      [
        'ends: mitre for tilt',
        'value: sawAngles(normalOf(board, id)).mitreDeg',
        'value: sawAngles(normalOf(board, id)).bevelDeg',
      ],
      [
        'ends: long point for short',
        "value: ends.shortPoint, unit: 'mm'",
        "value: ends.longPoint, unit: 'mm'",
      ],
    ],
  ),
  ...faults(
    'src/shop/boards/long-sides.ts',
    ['tests/shop/order-words.test.ts'],
    [
      [
        'long side: reference for opposite',
        "share > 0 ? 'reference' : 'opposite'",
        "share < 0 ? 'reference' : 'opposite'",
      ],
    ],
  ),
  ...faults(
    'src/shop/boards/side-of-blank.ts',
    [
      'tests/shop/steering-words.test.ts',
      'tests/shop/order-words.test.ts',
      'tests/shop/side-of-blank.test.ts',
    ],
    [
      [
        'side: faces exchanged',
        "if (on(2, 0)) return 'reference face';",
        "if (on(2, 0)) return 'opposite face';",
      ],
      [
        'side: edges exchanged',
        "if (on(1, 0)) return 'reference edge';",
        "if (on(1, 0)) return 'opposite edge';",
      ],
    ],
  ),
  ...faults(
    'src/shop/order/dry-fit.ts',
    ['tests/shop/order-words.test.ts'],
    [
      [
        'dry fit: measured at the short point',
        'const most = Math.max(...corners.map(([x]) => towards * x));',
        'const most = Math.min(...corners.map(([x]) => towards * x));',
      ],
      [
        'dry fit: from the other end',
        'frame.z[0] * towards > 0 && board',
        'frame.z[0] * towards < 0 && board',
      ],
      [
        'dry fit: height without the bench',
        'pointOut(place, corner)[2] - bench',
        'pointOut(place, corner)[2] + bench + 5',
      ],
    ],
  ),
  ...faults(
    'src/shop/order/shaping-steps.ts',
    ['tests/shop/order-of-work.test.ts', 'tests/shop/order-words.test.ts'],
    [
      [
        'milling: edge before face',
        'mill it: reference face flat, reference edge square to it, then',
        'mill it: reference edge straight, reference face square to it, then',
      ],
      [
        'milling: width for thickness',
        "{ name: 'thickness', value: thickness,",
        "{ name: 'thickness', value: width,",
      ],
    ],
  ),
  ...faults(
    'src/shop/boards/board-ends.ts',
    ['tests/shop/board-ends.test.ts'],
    [
      [
        'ends: parallel for mirrored',
        "if (angleDeg(a, scale(b, -1)) < PARALLEL_DEG) return 'parallel';",
        "if (angleDeg(a, scale(b, -1)) < PARALLEL_DEG) return 'mirrored';",
      ],
      [
        'ends: the short point too long',
        'const shortPoint = b.least - a.most;',
        'const shortPoint = b.least - a.least;',
      ],
      ['ends: the centre line off', '(longPoint + shortPoint) / 2', '(longPoint + shortPoint) / 2 + 0.2'],
    ],
  ),
  // tenons and glue
  ...faults(
    'src/shop/tenons/tenon-schedule.ts',
    ['tests/shop/tenon-schedule.test.ts', 'tests/shop/steering-words.test.ts'],
    [
      [
        'fit: a mallet is right',
        "go: 'goes in dry by hand pressure alone, and does not fall out",
        "go: 'goes in with a mallet, and does not fall out",
      ],
      ['fit: too thick and too thin exchanged', 'needs a mallet (too thick:', 'needs a mallet (too thin:'],
      [
        'tenon: as thick as the slot',
        'const thickness = slot.width - clearance;',
        'const thickness = slot.width;',
      ],
      [
        'tenon: end grain for face grain',
        "Math.SQRT1_2 - SAME_POINT ? 'end grain' : 'face grain'",
        "Math.SQRT1_2 - SAME_POINT ? 'face grain' : 'end grain'",
      ],
      [
        'slack: in the rail and not in the leg',
        'exactIn: railIsB ? b!.board : a!.board',
        'exactIn: railIsB ? a!.board : b!.board',
      ],
    ],
  ),
  ...faults(
    'src/shop/tenons/tenon-relief.ts',
    ['tests/shop/tenon-schedule.test.ts'],
    [
      ['air: of the mouth and not of the tenon', 'displacedMm3: tenon * into', 'displacedMm3: mouth * into'],
      ['grooves: on one cheek', 'areaMm2: 2 * perCheek * each * depth', 'areaMm2: perCheek * each * depth'],
    ],
  ),
  ...faults(
    'src/shop/tenons/slot-width.ts',
    ['tests/shop/tenon-schedule.test.ts'],
    [
      [
        'slot: the wider governs',
        'measured.toSorted((a, b) => a.width - b.width)[0]',
        'measured.toSorted((a, b) => b.width - a.width)[0]',
      ],
      [
        'slot: unmeasured is passed',
        "verdict: missing.length === 0 ? 'passed' : 'not verified'",
        "verdict: 'passed'",
      ],
    ],
  ),
  ...faults(
    'src/shop/glue-up/move-words.ts',
    ['tests/shop/glue-up-words.test.ts'],
    [
      ['moves: left for right', "['to the left', 'to the right']", "['to the right', 'to the left']"],
      ['moves: away for towards', "['towards you', 'away from you']", "['away from you', 'towards you']"],
      ['moves: up for down', "['down', 'up']", "['up', 'down']"],
      ['moves: the lean the other way round', 'Math.atan2(size, main!.size)', 'Math.atan2(main!.size, size)'],
    ],
  ),
  ...faults(
    'src/shop/glue-up/glue-up-stages.ts',
    ['tests/shop/glue-up.test.ts'],
    [
      [
        'glue-up: a stage longer than the glue is open',
        'minutesOf(together) > open',
        'minutesOf(together) > 2 * open',
      ],
    ],
  ),
  ...faults(
    'src/shop/clamps/clamps.ts',
    ['tests/shop/clamps.test.ts'],
    [['clamps: a stage is never ended for want of clamps', '> apart()', '> apart() + 9']],
  ),
  ...faults(
    'src/shop/glue-up/diagonals.ts',
    ['tests/shop/diagonals.test.ts'],
    [
      ['diagonals: side for diagonal', 'pairs: [pair(0, 2), pair(2, 0)]', 'pairs: [pair(0, 0), pair(2, 2)]'],
      ['diagonals: left for right', "['left', 'right']", "['right', 'left']"],
      ['diagonals: bottom for top', "['bottom', 'top']", "['top', 'bottom']"],
    ],
  ),
  ...faults(
    'src/shop/glue-up/glue-mass.ts',
    ['tests/shop/glue-up.test.ts', 'tests/shop/diagonals.test.ts'],
    [['glue: one cheek', '2 * Math.max(tenon.width', 'Math.max(tenon.width']],
  ),
  ...faults(
    'src/shop/clamps/clamps-chosen.ts',
    ['tests/shop/clamps.test.ts', 'tests/checks/clamps.test.ts'],
    [
      [
        'clamps: too small is enough',
        'clamp.opening >= need.opening &&',
        'clamp.opening >= need.opening - 50 &&',
      ],
      ['clamps: the throat forgotten', '&& clamp.throat >= need.throat;', ';'],
    ],
  ),
  ...faults(
    'src/shop/clamps/clamp-pad.ts',
    ['tests/shop/clamps.test.ts'],
    [
      [
        'pad: tapered the other way',
        'normal: [-Math.sin(angle), 0, Math.cos(angle)]',
        'normal: [Math.sin(angle), 0, Math.cos(angle)]',
      ],
      [
        'pad: thick side turned round',
        'unit(subtract(scale(normal, Math.cos(angle)), outwards))',
        'unit(subtract(outwards, scale(normal, Math.cos(angle))))',
      ],
    ],
  ),
  // stock and saw
  ...faults(
    'src/shop/stock/milling-lengths.ts',
    ['tests/shop/saw-limits.test.ts'],
    [
      ['milling lengths: kerfs forgotten', 'sum + length + kerfOf(shop)', 'sum + length'],
      [
        'milling lengths: shorter than the saw may be given',
        'Math.max(STOCK_PRACTICE.grip, shortestPiece(shop).saw - last)',
        '0',
      ],
      ['milling lengths: the planer forgotten', 'return Math.max(saw, planer);', 'return saw;'],
    ],
  ),
  ...faults(
    'src/shop/stock/saw-limits.ts',
    ['tests/shop/saw-limits.test.ts'],
    [
      [
        'saw: a rip measured across',
        "direction === 'rip' ? piece.length",
        "direction === 'rip' ? piece.width",
      ],
    ],
  ),
  ...faults(
    'src/shop/stock/guillotine-tree.ts',
    ['tests/shop/guillotine.test.ts'],
    [
      ['saw: no kerf in a rip', 'width: width - at - kerf }', 'width: width - at }'],
      ['saw: kerf on the near side', 'y: y + at + kerf, length', 'y: y + at, length'],
    ],
  ),
  ...faults(
    'src/shop/stock/cut-list.ts',
    ['tests/shop/cut-list.test.ts'],
    [['list: aids are bought', 'scrap: true, massKg', 'scrap: false, massKg']],
  ),
  // templates
  ...faults(
    'src/drawing/template/bevel-lines.ts',
    [
      'tests/drawing/template-of.test.ts',
      'tests/drawing/template-sides.test.ts',
      'tests/outside/dxf.test.ts',
    ],
    [
      [
        'bevel: longer on the wrong face',
        'longSides(bevel.normal)[0]',
        'longSides([bevel.normal[0], bevel.normal[1], -bevel.normal[2]])[0]',
      ],
      [
        'bevel: lines exchanged',
        'const onReference = linesAt(bevel, board, 0);',
        'const onReference = linesAt(bevel, board, board.blank.thickness);',
      ],
    ],
  ),
  ...faults(
    'src/drawing/printed-template/template-places.ts',
    ['tests/drawing', 'tests/shop/steering-words.test.ts'],
    [
      [
        'pins: inside the outline',
        '[low + i, -radius] : [-radius, low + i]',
        '[low + i, radius] : [radius, low + i]',
      ],
      ['pins: in the way of the cutter', '> reach + radius + CLEAR', '> 0'],
    ],
  ),
  ...faults(
    'src/drawing/template/downhill.ts',
    ['tests/drawing/downhill.test.ts'],
    [
      ['downhill: uphill', 'const withFeed = way[0] * out[0] > 0;', 'const withFeed = way[0] * out[0] < 0;'],
      ['downhill: out is in', 'const out: Vec2 = [way[1], -way[0]];', 'const out: Vec2 = [-way[1], way[0]];'],
    ],
  ),
  ...faults(
    'src/drawing/template/marks-off-cuts.ts',
    ['tests/drawing/template-of.test.ts'],
    [
      [
        'template: marks stay on top of lines that are cut',
        'if (high - low < ON_TOP)',
        'if (high - low < 1e9)',
      ],
    ],
  ),
  ...faults(
    'src/drawing/template/template-line.ts',
    ['tests/drawing/template-of.test.ts'],
    [
      [
        'template: openings shrink under a bush',
        'openings.flatMap((opening) => offset(opening, off))',
        'openings.flatMap((opening) => offset(opening, -off))',
      ],
    ],
  ),
  ...faults(
    'src/board/template-outline.ts',
    ['tests/checks/templates-left.test.ts'],
    [['template: outside the part', 'offset(outline, -off)', 'offset(outline, off)']],
  ),
  ...faults(
    'src/board/follower.ts',
    ['tests/drawing/template-of.test.ts'],
    [
      [
        'template: the whole difference for half',
        '(bush - pocketCutter({ cutter, bush }, width)) / 2',
        'bush - pocketCutter({ cutter, bush }, width)',
      ],
    ],
  ),
  // joinery
  ...faults(
    'src/joinery/axis.ts',
    ['tests/joinery/axis.test.ts', 'tests/joinery/lean.test.ts'],
    [
      ['axis: no more room along the lean', 'along: 1 / flat,', 'along: 1,'],
      ['axis: no more room across the lean', 'across: flat / dz,', 'across: 1,'],
      ['axis: skew forgotten', 'skew: Math.hypot(1, (dx * dy) / dz) - 1', 'skew: 0'],
      [
        'axis: towards the wrong board',
        'dot(towards, seat.z) < 0 ? scale(towards, -1) : towards',
        'dot(towards, seat.z) > 0 ? scale(towards, -1) : towards',
      ],
    ],
  ),
  // findings
  ...faults(
    'src/tables/cutters.ts',
    ['tests/checks/cutters-at-hand.test.ts'],
    [
      [
        'cutters: the farthest for the nearest',
        'Math.abs(size - wished) < Math.abs(best - wished) ? size : best',
        'Math.abs(size - wished) > Math.abs(best - wished) ? size : best',
      ],
    ],
  ),
  ...faults(
    'src/checks/shop/templates-left.ts',
    ['tests/checks/templates-left.test.ts'],
    [
      [
        'bush: a remedy that does not work',
        'templateOutline(board, { cutter, bush }).length > 0) return bush',
        'templateOutline(board, { cutter, bush }).length >= 0) return bush',
      ],
    ],
  ),
  // standing and strength
  ...faults(
    'src/strength/foot-line.ts',
    ['tests/strength/standing.test.ts'],
    [
      [
        'foot line: inside and outside exchanged',
        '(ax - x) * nx + (ay - y) * ny',
        '(x - ax) * nx + (y - ay) * ny',
      ],
      ['foot line: the best place told for the worst', 'if (here < inside)', 'if (here > inside)'],
    ],
  ),
  ...faults(
    'src/profile/minimum-rectangle.ts',
    ['tests/strength/standing.test.ts'],
    [['feet: a corner lost to its last bits', 'Math.round(at / SAME_POINT) * SAME_POINT', 'at']],
  ),
  ...faults(
    'src/joinery/edge-clearance.ts',
    ['tests/joinery/edge-clearance.test.ts'],
    [
      ['edges: a board that moves as its tenon does forgotten', 'own - Math.min(...moved)', 'own'],
      ['edges: nothing kept beyond the swelling', 'stepped(share * width + spare)', 'stepped(share * width)'],
    ],
  ),
  ...faults(
    'src/range/full-answer.ts',
    ['tests/range/real-checks.test.ts'],
    [
      [
        'ranges: what the data alone say never changes',
        "return [...new Set([...codes, ...open])].toSorted().join('\\n');",
        "return '';",
      ],
    ],
  ),
  ...faults(
    'src/strength/resting.ts',
    ['tests/strength/standing.test.ts'],
    [['mass: the middle of a tetrahedron a third of its corners', 'mx / (4 * six)', 'mx / (3 * six)']],
  ),
  ...faults(
    'src/strength/bent.ts',
    ['tests/strength/bending.test.ts'],
    [
      ['bending: the load taken for the middle', 'long * share * (1 - share)', 'long * share'],
      ['bending: rails below bear nothing', 'return own / (own + below);', 'return own / own;'],
    ],
  ),
  ...faults(
    'src/verdict/cures.ts',
    ['tests/verdict/cures.test.ts'],
    [
      ['cure: told without being tried', 'if (at !== last && (await tried(at))) return at;', 'return at;'],
      [
        'cure: of a refusal with errors left',
        "if (refused || findings.some(({ level }) => level === 'error')) continue;",
        'if (refused) continue;',
      ],
    ],
  ),
  // papers and the order of work
  ...faults(
    'src/shop/set-up/guide-figures.ts',
    ['tests/shop/steering-words.test.ts'],
    [
      ['edge guide: the farthest edge', '=> a.distance - b.distance)[0]', '=> b.distance - a.distance)[0]'],
      ['edge guide: the horn forgotten', 'edge.distance + hornBeyond(edge.face)', 'edge.distance'],
      ['edge guide: offered without a reach', 'guideReach = 0 }', 'guideReach = 900 }'],
    ],
  ),
  ...faults(
    'src/shop/holding/laid-in.ts',
    ['tests/shop/steering-words.test.ts'],
    [
      [
        'wedge: not turned with the work',
        "thickEnd === 'start' ? 'end' : thickEnd === 'end' ? 'start' : thickEnd",
        'thickEnd',
      ],
    ],
  ),
  ...faults(
    'src/shop/papers/setup-settings.ts',
    ['tests/shop/steering-words.test.ts'],
    [
      [
        'stops: those of a guide board on the work',
        "guideOffset === undefined ? '' : '; clamped to the guide board",
        "guideOffset !== undefined ? '' : '; clamped to the guide board",
      ],
    ],
  ),
  ...faults(
    'src/shop/set-up/setup-cards.ts',
    ['tests/shop/steering-words.test.ts', 'tests/shop/order-words.test.ts'],
    [['test blank: square where a wedge wants a lean', 'wedged.length === 0 ?', 'wedged.length >= 0 ?']],
  ),
  ...faults(
    'src/shop/order/order-of-work.ts',
    ['tests/shop/order-words.test.ts', 'tests/shop/order-of-work.test.ts'],
    [
      [
        'order: the test cut after its mortise',
        'return [testCutStep(card, job), draft];',
        'return [draft, testCutStep(card, job)];',
      ],
      [
        'order: a wide blank glued after milling',
        'return [edgeJoint(glued), mill];',
        'return [mill, edgeJoint(glued)];',
      ],
      [
        'order: horns off before the mortises that need them',
        "...cutting('milled blank'),\n    ...shaping('horns off'),",
        "...shaping('horns off'),\n    ...cutting('milled blank'),",
      ],
      [
        'order: no tenons before the dry fit that needs them',
        '    ...tenonSteps(design, job),\n    ...(fitted.length > 0',
        '    ...(fitted.length > 0',
      ],
    ],
  ),
  ...faults(
    'src/shop/order/whole-job.ts',
    ['tests/shop/order-words.test.ts'],
    [['order: the wrong test blank', 'test blank X${at + 1}', 'test blank X${at + 2}']],
  ),
  ...faults(
    'src/drawing/printed-template/template-marks.ts',
    ['tests/drawing/template-sides.test.ts'],
    [
      [
        'saw line: inside the board',
        'offset(counterClockwise(board.outline), SAW_OFF)',
        'offset(counterClockwise(board.outline), -SAW_OFF)',
      ],
      [
        'saw line: outside the opening',
        'offset(counterClockwise(outline), -SAW_OFF)',
        'offset(counterClockwise(outline), SAW_OFF)',
      ],
    ],
  ),
  ...faults(
    'src/files/papers/markdown.ts',
    ['tests/files/markdown.test.ts'],
    [['Markdown: backticks not escaped', '[\\\\`*_', '[\\\\*_']],
  ),
  ...faults(
    'src/drawing/plan/plan-figures.ts',
    ['tests/files/plan.test.ts'],
    [
      [
        'figure: of the first card for every card',
        'papers.cards.find(({ id }) => id === key.card),\n          key,\n        ),\n        units,',
        'papers.cards[0],\n          key,\n        ),\n        units,',
      ],
    ],
  ),
  // lengths
  ...faults(
    'src/length/print-length.ts',
    ['tests/length'],
    [['a caliper read to hundredths', 'fixed(mm / INCH, 3)', 'fixed(mm / INCH, 2)']],
  ),
  // pieces told in a file
  ...[
    [
      'short of runs away from what is named',
      'places/place.ts',
      "relation === 'past' ? sign : -sign",
      "relation === 'past' ? -sign : sign",
      'boards',
    ],
    [
      'copies spread as if one gap were missing',
      'places/evenly.ts',
      'outer ? count + 1 :',
      'outer ? count :',
      'boards',
    ],
    [
      'a taper on both sides takes all of it from each',
      'shapes/taper.ts',
      '/ (opposite ? 2 : 1)',
      '/ (opposite ? 1 : 1)',
      'like-models',
    ],
    [
      'a row of holes runs out of the board',
      'shapes/holes.ts',
      'start[run] > end / 2 ? -1 : 1',
      'start[run] > end / 2 ? 1 : -1',
      'not-glued',
    ],
    [
      'a mitre is cut on the side that stays',
      'joints/mitres.ts',
      'normal: side > 0 ? scale(normal, -1) : normal',
      'normal: side > 0 ? normal : scale(normal, -1)',
      'boards',
    ],
    [
      'the outer sides of a corner are taken for the inner ones of one board',
      'joints/mitres.ts',
      'besides(b, square, a)',
      'besides(b, square, b)',
      'boards',
    ],
    [
      'ends mitred in two lines share a name',
      'joints/design-of.ts',
      'id: `mitre-${own.cuts.length + 1}`',
      "id: 'mitre-1'",
      'boards',
    ],
    [
      'the length of screws is not asked',
      'joints/held.ts',
      "screwLength: length('long')",
      "screwLength: length('wide')",
      'not-glued',
    ],
    [
      'who uses a piece is not asked',
      'places/use.ts',
      'child: children ? reckon.yes(children)',
      'child: children ? USUAL_USER.child',
      'not-glued',
    ],
  ].map(([name, file, from, to, test]) => ({
    name: `notation: ${name}`,
    file: `src/notation/${file}`,
    from,
    to,
    tests: [`tests/notation/${test}.test.ts`],
  })),
  ...faults(
    'src/strength/stock-state.ts',
    ['tests/strength/bending.test.ts'],
    [
      ['wood: the slope on the edge is left out', '? 0 : 1 / grainOneInOnEdge', '? 0 : 0 / grainOneInOnEdge'],
      ['wood: the damp of the place is left out', 'Math.max(TABLES, dampPercent)', 'TABLES'],
    ],
  ),
  ...faults(
    'src/strength/joint-holds.ts',
    ['tests/strength/joints.test.ts'],
    [
      ['glue: what was measured bounds nothing', 'own.shear.five, glued)', 'own.shear.five)'],
      ['tenons: their own wood is not asked', 'joint.tenonWood ?? a.board.material', 'a.board.material'],
    ],
  ),
  ...faults(
    'src/assembly/fasten.ts',
    ['tests/strength/faults.test.ts'],
    [['buttons: the place they stand in is left out', 'along), season)', 'along))']],
  ),
];

function faults(file, tests, rows) {
  return rows.map(([name, from, to]) => ({ name, file, from, to, tests }));
}
