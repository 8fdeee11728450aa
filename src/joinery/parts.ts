import type { Board, Mortise, Pocket } from '../board/index.js';
import {
  directionIn,
  directionOut,
  type Frame,
  frame,
  frameIn,
  pointOut,
  settled,
  turnedOver,
} from '../frame/index.js';
import { edgeInMortise } from './edge-clearance.js';
import type { Fit, GaveWay, Joint, Tenon } from './joint.js';
import type { Laid, Mitre } from './layout.js';

/** The tenons of a joint that has its places. */
export function tenonsOf(laid: Laid): readonly Tenon[] {
  const { draft, row, depths, give } = laid;
  const fit = fitOf(laid);
  const [mitreA, mitreB] = give.mitres;
  // a given depth may be more than a mitred tenon needs
  const intoA = mitreA ? mitreA.into : depths[0] - fit.end;
  const intoB = mitreB ? mitreB.into : depths[1] - fit.end;
  return placesOf(laid).map(
    (place, i): Tenon => ({
      id: `${draft.id}/${i + 1}`,
      place,
      thickness: draft.thickness,
      width: row.length - fit.edge,
      length: intoA + intoB,
      intoA,
      intoB,
      ...(mitreA ? { mitreA: endOf(mitreA) } : {}),
      ...(mitreB ? { mitreB: endOf(mitreB) } : {}),
    }),
  );
}

/** The fit of a joint that has its places: a wide tenon gets room to swell, unless its clearance or its width was asked for. */
function fitOf({ draft: { fit, options, swells }, row }: Laid): Fit {
  if (options.edgeClearance !== undefined || options.tenonWidth !== undefined) return fit;
  return { ...fit, edge: edgeInMortise(row.length, swells.share, swells.spare) };
}

const endOf = ({ into: _, ...end }: Mitre) => end;

/** Where the tenons of a joint stand, assembly frame, row after row. */
export function placesOf({ draft, row, rowsAt, drop }: Laid): readonly Frame[] {
  const { seat, lean } = draft;
  return rowsAt.flatMap((across) =>
    row.centres.map((centre): Frame => {
      const origin = pointOut(seat, [centre, across, 0]);
      return drop === 0 ? { ...seat, origin } : frame(origin, directionOut(seat, lean.axis), seat.x);
    }),
  );
}

/** The air of a joint's mortises in one of its boards, assembly frame. */
export const pocketsIn = (laid: Laid, side: 0 | 1): readonly Pocket[] =>
  placesOf(laid).map((place, i) => ({
    id: `${laid.draft.id}/${i + 1}`,
    at: side === 0 ? place : turnedOver(place),
    length: laid.row.length,
    width: laid.draft.cutter,
    depth: laid.depths[side],
  }));

/** The joint as the design keeps it. */
export function jointOf(laid: Laid, gaveWay: readonly GaveWay[]): Joint {
  const { draft } = laid;
  return {
    id: draft.id,
    a: draft.sides[0].board.id,
    b: draft.sides[1].board.id,
    seat: draft.seat,
    contactAreaMm2: draft.areaMm2,
    shoulder: { length: draft.length, width: draft.width },
    cutter: draft.cutter,
    fit: fitOf(laid),
    endInset: draft.inset,
    web: draft.web,
    thinner: draft.thinner,
    ...(draft.rows === 1 ? {} : { rows: draft.rows }),
    tenons: tenonsOf(laid),
    ...(draft.tenonWood !== undefined && { tenonWood: draft.tenonWood }),
    ...(gaveWay.length === 0 ? {} : { gaveWay }),
  };
}

/** The mortises of a joint in one of its boards, board frame. */
export function mortisesIn(laid: Laid, joint: Joint, which: 0 | 1): readonly Mortise[] {
  const side = laid.draft.sides[which];
  const leaning = laid.drop !== 0;
  return joint.tenons.map((tenon) => ({
    id: tenon.id,
    face: side.face.id,
    ...(leaning ? { faceNormal: directionIn(side.place, side.out.z) } : {}),
    at: settled(frameIn(side.place, which === 0 ? tenon.place : turnedOver(tenon.place))),
    width: joint.cutter,
    length: laid.row.length,
    depth: laid.depths[which],
    joint: joint.id,
    tenon: tenon.id,
  }));
}

/** A board with more mortises. */
export const withMortises = (board: Board, more: readonly Mortise[]): Board => ({
  ...board,
  mortises: [...board.mortises, ...more],
});
