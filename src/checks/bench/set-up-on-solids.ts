import { type Board, type Face, faces as facesOf } from '../../board/index.js';
import { type Frame, frameIn, type Vec3, WORLD } from '../../frame/index.js';
import { circle, regionOf } from '../../profile/index.js';
import {
  guidedEdge,
  type Holding,
  type Holdings,
  type JigAtHand,
  type Shop,
  seenStage,
  stagesOf,
  standingBase,
  withHorn,
} from '../../shop/index.js';
import { type Kernel, prism, stockOf } from '../../solid/index.js';
import { guideByMarks, located } from './located.js';
import { jigPieces, type Piece, pieceOf, pushed, standingPiece } from './piece-in-place.js';

/** What the shop lays on the bench for the dry run. */
export interface Held extends Holdings {
  readonly jig: JigAtHand;
  readonly shop: Shop;
}

/** One set-up on the solids, seen from the cutter half way between the stops: x along the travel, z up out of the work; mm. */
export interface SetUp {
  /** The cutter's frame in the board's. */
  readonly place: Frame;
  /** The board alone. */
  readonly work: Piece;
  /** The work and what is fixed to it: wedges, support blocks, a guide or a template. */
  readonly fixed: readonly Piece[];
  readonly travelling: readonly Piece[];
  /** Pairs that must touch: what moves, and what it bears on. */
  readonly bearing: readonly (readonly [moves: Piece, on: Piece])[];
  /** How far the cutter goes to each side. */
  readonly travel: number;
  /** How deep it goes: as thick as the depth block. */
  readonly depth: number;
}

/** What each kind of set-up adds to the work and its support blocks. */
type Guided = Pick<SetUp, 'fixed' | 'travelling' | 'bearing' | 'travel'>;

/** Thickness a router's base is given when the shop does not say, mm: only its underside matters. */
const BASE_THICKNESS = 10;

/**
 * Lays set-ups out on the solids. Bodies of the jig, of each stage and of each aid are made once; the kernel owns them.
 *
 * Boards stand as if none of their mortises were cut: with the most wood in the way.
 *
 * @returns undefined for a set-up taken from a face the board does not have at that stage
 */
export function setUpsOnSolids(
  kernel: Kernel,
  boards: readonly Board[],
  held: Held,
): (holding: Holding) => SetUp | undefined {
  const jig = jigPieces(kernel, held.jig);
  const aids = new Map(held.aids.map(({ board }) => [board.id, board] as const));
  const aidBody = memo((id) => stockOf(kernel, aids.get(id)!));
  const stageOf = memo((_: string, holding: Holding) => {
    const board = boards.find(({ id }) => id === holding.board)!;
    const plain = stagesOf(board).find(({ name }) => name === holding.stage)!;
    const stage = withHorn(plain, holding.horn);
    return {
      faces: seenStage(stage, facesOf(board)).faces,
      body: stockOf(kernel, stage.board),
    };
  });
  return (holding) => {
    const { horn } = holding;
    const stage = stageOf(`${holding.board} ${holding.stage} ${horn?.end} ${horn?.length}`, holding);
    const place = located(holding, stage.faces);
    if (!place) return undefined;
    const work = standingPiece(kernel, holding.board, stage.body, frameIn(place, WORLD));
    const aid = (id: string, at: Frame): Piece => standingPiece(kernel, id, aidBody(id), frameIn(place, at));
    const supports = holding.supports.map((use) => aid(use.aid, use.place));
    const guided =
      onRails(holding, work, held.jig, jig, aid) ??
      withoutRails(kernel, byMarks(holding, place, stage.faces, aids), held.shop, aids, aid);
    return {
      ...guided,
      place,
      work,
      fixed: [work, ...guided.fixed, ...supports],
      depth: aids.get(holding.depthBlock)!.blank.thickness,
    };
  };
}

/** A guide board that is set by marks stands where they put it. */
function byMarks(
  holding: Holding,
  cutter: Frame,
  faces: readonly Face[],
  aids: ReadonlyMap<string, Board>,
): Holding {
  const { guide, marked, mortise } = holding;
  if (!guide || !marked?.guideEdge) return holding;
  const { length } = aids.get(guide.aid)!.blank;
  const place = guideByMarks(marked.guideEdge, cutter, faces, mortise.face, length) ?? guide.place;
  return { ...holding, guide: { ...guide, place } };
}

type PlaceAid = (id: string, at: Frame) => Piece;

function onRails(
  holding: Holding,
  work: Piece,
  jig: JigAtHand,
  pieces: ReadonlyMap<string, Piece>,
  aid: PlaceAid,
): Guided | undefined {
  if (!holding.near && !holding.far) return undefined;
  const rails = (['near', 'far'] as const).flatMap((side) => {
    const use = holding[side];
    if (!use) return [];
    const shift: Vec3 = [0, (side === 'near' ? -1 : 1) * (use.toRail - jig[side].drawn), -jig.slidingZ];
    const moved = jig[side].moves.map((id) => pushed(pieces.get(id)!, shift));
    const rail = moved.find(({ name }) => name === jig[side].id)!;
    return [{ moved, rail, wedge: use.wedge && aid(use.wedge.aid, use.wedge.place) }];
  });
  const moving = new Set([...jig.near.moves, ...jig.far.moves]);
  const still = [...pieces.values()].filter(({ name }) => !moving.has(name));
  return {
    fixed: rails.flatMap(({ wedge }) => wedge ?? []),
    travelling: [
      ...still.map((piece) => pushed(piece, [0, 0, -jig.slidingZ])),
      ...rails.flatMap(({ moved }) => moved),
    ],
    bearing: rails.flatMap(({ rail, wedge }): (readonly [Piece, Piece])[] =>
      wedge
        ? [
            [rail, wedge],
            [wedge, work],
          ]
        : [[rail, work]],
    ),
    travel: holding.stopDistance - jig.plate.along / 2,
  };
}

function withoutRails(
  kernel: Kernel,
  holding: Holding,
  shop: Shop,
  aids: ReadonlyMap<string, Board>,
  aid: PlaceAid,
): Guided {
  const { guide, window } = holding;
  const thick = shop.router.baseThickness ?? BASE_THICKNESS;
  const towards = guide?.side === 'near' ? -1 : 1;
  const outline = standingBase(shop.router, towards);
  const bare = pieceOf('router base', kernel.keep(prism(kernel, [outline], 0, thick, undefined)));
  if (guide) {
    const board = aid(guide.aid, guide.place);
    const off = guidedEdge(shop.router) - Math.max(...outline.map(([, y]) => towards * y));
    const router = pushed(bare, [0, towards * off, 0]);
    return {
      fixed: [board],
      travelling: [router],
      bearing: [[router, board]],
      travel: holding.stopDistance - Math.max(...outline.map(([x]) => x)),
    };
  }
  if (!window) return { fixed: [], travelling: [bare], bearing: [], travel: 0 };
  const template = aid(window.aid, window.place);
  const top = aids.get(window.aid)!.blank.thickness;
  const collar = shop.bushes.find(({ outside }) => outside === window.bush)?.collarLength ?? top;
  const ring = regionOf(circle({ diameter: window.bush }));
  const bush = pieceOf('guide bush', kernel.keep(prism(kernel, ring, top - collar, top, undefined)));
  const travel = (window.length - window.bush) / 2;
  return {
    fixed: [template],
    travelling: [pushed(bare, [0, 0, top]), bush],
    // it touches the opening's end when the cutter is at the mortise's
    bearing: [[pushed(bush, [travel, 0, 0]), template]],
    travel,
  };
}

function memo<A extends readonly unknown[], T>(
  make: (key: string, ...rest: A) => T,
): (key: string, ...rest: A) => T {
  const known = new Map<string, T>();
  return (key, ...rest) => {
    const found = known.get(key) ?? make(key, ...rest);
    known.set(key, found);
    return found;
  };
}
