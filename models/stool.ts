import {
  assemble,
  type Derived,
  type JoinRequest,
  type PlacedBoard,
  trimmedTo,
} from '../src/assembly/index.js';
import { makeBoard } from '../src/board/index.js';
import { frame, WORLD } from '../src/frame/index.js';
import type { JoinOptions } from '../src/joinery/index.js';
import { defineModel, type Tools } from '../src/model/index.js';
import { obround } from '../src/profile/index.js';
import { type Layout, layOut, type Tread } from './stool/layout.js';
import { parameters } from './stool/parameters.js';
import { type Sides, sides } from './stool/side.js';
import { type StoolSizes, sized } from './stool/sizes.js';

const HANDS = ['left', 'right'] as const;

const TWO_BOARDS =
  'Each side is two boards, their grain upright, glued edge to edge once their mortises are cut: keep both faces flush as you clamp the seam.';

export default defineModel({
  name: 'stool',
  title: 'Step stool',
  summary: 'A step for a potting shed: one or two treads on raked, tapered sides with a stretcher between.',
  parameters,
  complete: sized,
  build(given, tools) {
    const values = sized(given, tools);
    const l = layOut(values, tools);
    const standing = sides(l);
    return assemble({
      name: 'stool',
      title: values.treads === 1 ? 'Step stool' : 'Step stool with two treads',
      cutter: l.cutter,
      boards: [
        ...l.treads.map((tread, i) => treadBoard(tread, l, values, i === 0)),
        standing.left,
        standing.right,
        ...standing.steps,
        stretcher(l, standing),
      ],
      joints: joints(l, values, tools),
      uses: l.treads.map(({ id }) => ({ board: id, use: 'step' as const })),
      user: { kg: values.person, child: values.child },
      derived: derived(l, values),
      notes: [
        'Left and right are as seen by the person standing in front of the stool.',
        ...(standing.steps.length > 0 ? [TWO_BOARDS] : []),
        'Not certified: test it with a load before anyone stands on it, and keep children supervised.',
      ],
    });
  },
});

/** A tread lies on its reference face, which is its underside. */
function treadBoard(tread: Tread, l: Layout, v: StoolSizes, top: boolean): PlacedBoard {
  const width = tread.back - tread.front;
  const hand = obround({ length: v.handLength, width: v.handWidth, centre: [tread.length / 2, width / 2] });
  return {
    board: makeBoard({
      id: tread.id,
      material: l.material,
      blank: { length: tread.length, width, thickness: v.treadThickness },
      openings: top && v.handOpening ? [{ id: 'hand-opening', outline: hand }] : [],
    }),
    place: { ...WORLD, origin: [-tread.length / 2, tread.front, tread.under] },
  };
}

/** The stretcher stands on its reference edge; its ends are cut to the inner faces of the sides. */
function stretcher(l: Layout, { left, right }: Sides): PlacedBoard {
  const { width, thickness, height, middle } = l.stretcher;
  const half = l.outerAt(0);
  const uncut = {
    board: makeBoard({
      id: 'stretcher',
      material: l.material,
      blank: { length: 2 * half, width, thickness },
    }),
    place: frame([-half, middle + thickness / 2, height], [0, -1, 0], [1, 0, 0]),
  };
  return trimmedTo(trimmedTo(uncut, left, 'opposite-face', 'left'), right, 'opposite-face', 'right');
}

function joints(l: Layout, v: StoolSizes, { deepest: reach, wood }: Tools): readonly JoinRequest[] {
  const deepest = reach?.(l.cutter);
  const shared: JoinOptions = {
    cutter: l.cutter,
    ...(deepest !== undefined && { deepest }),
    cheekClearance: v.cheekClearance,
    ...(v.edgeClearance !== undefined && { edgeClearance: v.edgeClearance }),
    ...wood,
    endGap: v.endGap,
  };
  // the lower tread of a side built of two boards stands on the front one alone
  const under = (tread: Tread) => (l.step && !l.step.sawn && tread.id === 'lower-tread' ? 'step' : 'side');
  return [
    ...(l.step && !l.step.sawn
      ? HANDS.map((hand) => ({ a: `${hand}-step`, b: `${hand}-side`, options: shared }))
      : []),
    ...l.treads.flatMap((tread) =>
      HANDS.map((hand) => ({
        a: tread.id,
        b: `${hand}-${under(tread)}`,
        options: { ...shared, tenons: v.treadTenons },
      })),
    ),
    ...HANDS.map((hand) => ({
      a: 'stretcher',
      b: `${hand}-side`,
      options: {
        ...shared,
        tenons: v.stretcherTenons,
        axis: v.stretcherAxis === 'along-stretcher' ? ('along a' as const) : ('face' as const),
      },
    })),
  ];
}

function derived(l: Layout, v: StoolSizes): readonly Derived[] {
  const mm = (name: string, value: number, help: string): Derived => ({ name, value, unit: 'mm', help });
  return [
    mm('width at the floor', 2 * l.outerAt(0), 'outside to outside of the feet'),
    mm('depth at the floor', l.footBack - l.footFront, 'front to back of the feet'),
    mm('cutter', l.cutter, 'it sets the width of every mortise'),
    mm('side length', l.side.length, 'long point to long point'),
    mm('bevel run', l.side.bevelRun, 'from long to short point of a bevelled end, along the grain'),
    mm(
      'foot beyond the tread',
      l.outerAt(0) - v.treadLength / 2,
      'how far each foot stands outside the end of the top tread; below 0 the tread tips more easily',
    ),
  ];
}
