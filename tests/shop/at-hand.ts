import jig from '../../models/jig.js';
import type { Design } from '../../src/assembly/index.js';
import { type Board, type Mortise, makeBoard } from '../../src/board/index.js';
import { type Frame, frame, WORLD } from '../../src/frame/index.js';
import { readParameters } from '../../src/model/index.js';
import { type JigAtHand, jigAtHand, type Shop } from '../../src/shop/index.js';

type Raw = Readonly<Record<string, string | number>>;

/** A jig built with some of its sizes given. */
export const jigWith = (raw: Raw = {}): JigAtHand => jigAtHand(jig.build(readParameters(jig, raw, 'mm')));

/** A shop that says nothing but the size of the router's base. */
export const BARE_SHOP: Shop = {
  name: 'bare shop',
  units: 'mm',
  measures: 'mm',
  router: { base: { shape: 'round', along: 150, across: 150 } },
  cutters: [],
  bushes: [],
  jig: {},
  sheets: [],
  lumber: [],
  shortest: {},
  clamps: [],
  paper: 'A4',
};

/** A mortise 40 × 8 × 20 on a face, its length along x. */
export const mortiseOn = (face: string, at: Frame, given: Partial<Mortise> = {}): Mortise => ({
  id: 'm',
  face,
  at,
  width: 8,
  length: 40,
  depth: 20,
  joint: 'j',
  tenon: 't',
  ...given,
});

/** A board with one mortise in the middle of its reference edge, its length along the grain. */
export function edgeBoard(thickness: number, fromReferenceFace = thickness / 2): Board {
  const board = makeBoard({ id: 'rail', blank: { length: 600, width: 90, thickness } });
  const at = frame([300, 0, fromReferenceFace], [0, -1, 0], [1, 0, 0]);
  return { ...board, mortises: [mortiseOn('reference-edge', at)] };
}

/** A wide board with one mortise in its reference face, across the grain, a distance from its reference end. */
export function faceBoard(fromEnd: number, thickness = 28): Board {
  const board = makeBoard({ id: 'tread', blank: { length: 420, width: 240, thickness } });
  const at = frame([fromEnd, 120, 0], [0, 0, -1], [0, 1, 0]);
  return { ...board, mortises: [mortiseOn('reference-face', at)] };
}

/** A design of one board that stands by itself. */
export const alone = (board: Board): Design => ({
  name: 'bench',
  title: 'Bench',
  cutter: 8,
  boards: [{ board, place: WORLD }],
  joints: [],
  hardware: [],
  derived: [],
  notes: [],
});
