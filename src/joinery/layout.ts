import { settledPlace } from '../frame/index.js';
import { SAME_POINT } from '../tolerances.js';
import { dropOf } from './axis.js';
import type { Span } from './clear-span.js';
import { type Draft, refuse } from './draft.js';
import type { MitredEnd } from './joint.js';
import { PRACTICE } from './practice.js';
import { LENGTH_STEP, layOut, type Row } from './row.js';
import { type Footprint, type Side, spanAcross, spanAlong, usualDepth } from './side.js';

/** What a joint gives up for others; nothing at first. mm. */
export interface Give {
  /** Deepest its mortises may be in each board, along the axis at the middle of the mouth. */
  readonly most: readonly [a: number | undefined, b: number | undefined];
  /** Where its tenons are mitred. */
  readonly mitres: readonly [a: Mitre | undefined, b: Mitre | undefined];
  /** Where its mortises may lie along the seat's x. */
  readonly room: Span;
  /** Off the balanced middle, along the seat's y. */
  readonly across: number;
  /** Which of every two places it has in a row shared with another. */
  readonly turn: 0 | 1 | undefined;
}

/** A mitred end and how far its long point goes in. mm. */
export interface Mitre extends MitredEnd {
  readonly into: number;
}

const NOTHING_GIVEN: Give = {
  most: [undefined, undefined],
  mitres: [undefined, undefined],
  room: { from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY },
  across: 0,
  turn: undefined,
};

/** A joint with its places. mm. */
export interface Laid {
  readonly draft: Draft;
  readonly give: Give;
  /** Depths of the mortises in a and b, along the axis from the middle of the mouth. */
  readonly depths: readonly [a: number, b: number];
  readonly row: Row;
  /** Middles of its rows, along the seat's y. */
  readonly rowsAt: readonly number[];
  /** How far the short point of a mouth lies below its middle. */
  readonly drop: number;
  /** Where its mortises may lie along the seat's x: the wood less what is kept at its ends. */
  readonly room: Span;
  /** How far the wood runs across them. */
  readonly walls: Span | undefined;
}

/** The ends of the mortises move the balance across a little, and the other way round: twice is enough. */
const ROUNDS = 2;

/**
 * Gives the mortises of a joint their depth, their place across and their places along.
 *
 * @throws JoinError `no-room` when the seat is too small for what is asked
 */
export function laidOut(draft: Draft, give: Give = NOTHING_GIVEN): Laid {
  const { sides, options, lean, fit, inset } = draft;
  // what the cutter takes of the seat across: more when it leans
  const swath = draft.cutter * lean.across;
  const patchSide: Side = { ...sides[0], section: () => draft.patch };
  const seatAndSides = [...sides, patchSide];
  const inner = Math.max(draft.length / 2 - inset, swath / 2);
  let foot: Footprint = {
    along: { from: -inner, to: inner },
    across: options.shiftAcross ?? give.across,
    width: swath,
  };
  const apart = rowsApart(draft, patchSide, foot, swath);
  foot = { ...foot, width: swath + 2 * apart };
  let depths: readonly number[] = [];
  let room: Span | undefined;
  let walls: Span | undefined;
  for (let round = 0; round < ROUNDS; round += 1) {
    depths = sides.map((side, i) => depthIn(draft, give, side, i, foot));
    fitsMouth(draft, patchSide, foot);
    walls = spanAcross(seatAndSides, [...depths, 0], foot);
    if (options.shiftAcross === undefined && walls) {
      foot = { ...foot, across: settledPlace((walls.from + walls.to) / 2) + give.across };
    }
    room = spanAlong(seatAndSides, [...depths, 0], foot) ?? spanAlong([patchSide], [0], foot);
    if (!room) {
      return refuse(
        draft.id,
        'the middles of its mortises lie outside the wood: shift them towards the middle of the seat',
      );
    }
    room = { from: Math.max(room.from, give.room.from - inset), to: Math.min(room.to, give.room.to + inset) };
    if (room.to - room.from > 2 * inset + draft.cutter) {
      foot = { ...foot, along: { from: room.from + inset, to: room.to - inset } };
    }
  }
  const row = rowIn(draft, give, room!);
  // a depth that is given counts from the short point of the mouth
  const drop = dropOf(lean, row.length, draft.cutter);
  const [a, b] = depths.map(
    (depth, i) => depth + (options.depths?.[sides[i]!.board.id] === undefined ? 0 : drop),
  );
  if (Math.min(a!, b!) - fit.end <= drop) {
    refuse(
      draft.id,
      (say) =>
        `its mortises are ${[a!, b!].map((depth) => say.length(depth)).join(' and ')} deep and the tenon stays ${say.fine(fit.end)} from each bottom, so no tenon is left: deepen the mortises or allow a smaller end gap`,
    );
  }
  return {
    draft,
    give,
    depths: [a!, b!],
    row,
    rowsAt: apart === 0 ? [foot.across] : [foot.across - apart, foot.across + apart],
    drop,
    room: { from: room!.from + inset, to: room!.to - inset },
    walls,
  };
}

function depthIn(draft: Draft, give: Give, side: Side, i: number, foot: Footprint): number {
  const asked = draft.options.depths?.[side.board.id];
  if (asked !== undefined) return asked;
  const mitre = give.mitres[i];
  // rounded up, so that a stop can be set by a rule: the tenon keeps its length
  if (mitre) return Math.ceil((mitre.into + draft.fit.end) / LENGTH_STEP - SAME_POINT) * LENGTH_STEP;
  return Math.min(
    usualDepth(side, foot, draft.thickness),
    draft.options.deepest ?? Number.POSITIVE_INFINITY,
    give.most[i] ?? Number.POSITIVE_INFINITY,
  );
}

/** How far two rows stand off their common middle: walls and the wood between them are alike. 0 for one row. */
function rowsApart(draft: Draft, patchSide: Side, foot: Footprint, swath: number): number {
  if (draft.rows === 1) return 0;
  const mouth = spanAcross([patchSide], [0], foot);
  const wide = mouth ? mouth.to - mouth.from : draft.width;
  const wood = (wide - 2 * swath) / 3;
  if (wood < PRACTICE.wall) {
    refuse(
      draft.id,
      (say) =>
        `two rows of mortises ${say.fine(swath)} wide leave ${say.lengths(Math.max(wood, 0), PRACTICE.wall)[0]} of wood beside and between them on a seat ${say.length(wide)} wide; at least ${say.lengths(Math.max(wood, 0), PRACTICE.wall)[1]} must be left: ask for one row, or use a thinner cutter or thicker boards`,
    );
  }
  return (wood + swath) / 2;
}

function fitsMouth(draft: Draft, patchSide: Side, foot: Footprint): void {
  const mouth = spanAcross([patchSide], [0], foot);
  const swath = foot.width;
  if (!mouth || mouth.to - mouth.from < swath) {
    refuse(draft.id, (say) =>
      mouth
        ? `its seat is ${say.length(mouth.to - mouth.from)} wide; it must be at least as wide as the cutter, ${say.fine(swath)}: use a thinner cutter or thicker boards`
        : `no straight mortise fits ${foot.across === 0 ? 'round' : `${say.fine(foot.across)} off`} the middle of its seat, ${say.length(Math.max(draft.length, draft.width))} long and ${say.length(Math.min(draft.length, draft.width))} wide: shift the mortises across it, or keep openings out of the seat`,
    );
  } else if (
    foot.across - swath / 2 < mouth.from - SAME_POINT ||
    foot.across + swath / 2 > mouth.to + SAME_POINT
  ) {
    const most = (mouth.to - mouth.from - swath) / 2;
    refuse(
      draft.id,
      (say) =>
        `the shift across puts its mortises ${say.fines(foot.across, most)[0]} off the middle of its seat; ${say.fines(foot.across, most)[1]} either way is the most there is room for: shift them less`,
    );
  }
}

/** The row on the seat; for an oblique joint it is laid out square to the axis and seen along it. */
function rowIn({ id, options, lean, ...draft }: Draft, give: Give, room: Span): Row {
  const { along, skew } = lean;
  const ends = (draft.cutter * skew) / 2;
  const seen = { from: room.from / along + ends, to: room.to / along - ends };
  const row = layOut(id, seen, {
    ...draft,
    inset: draft.inset / along,
    web: (give.turn === undefined ? draft.web : PRACTICE.wall) / along,
    count: options.tenons,
    width: options.tenonWidth,
    spacing: options.spacing && options.spacing / along,
    places: options.places?.map((place) => place / along),
    shift: (options.shiftAlong ?? 0) / along,
    turn: give.turn,
  });
  return { ...row, centres: row.centres.map((centre) => settledPlace(centre * along)) };
}
