import { COPLANAR, SAME_POINT } from '../../tolerances.js';
import type { Shop, Verdict } from '../at-hand/index.js';
import { STOCK_PRACTICE } from '../practice/index.js';
import type { TenonKind } from './tenon-schedule.js';

/** Figures of the strip plan that may be overridden; lengths mm, `spares` a share of the tenons needed. */
export interface StripOptions {
  readonly longest?: number;
  readonly grip?: number;
  readonly spares?: number;
}

/** What is cut from one strip, in order from its free end. */
export interface StripPiece {
  readonly mark: string;
  readonly length: number;
  readonly use: 'tenon' | 'spare' | 'test piece';
}

/** One strip: milled in one length, its edges shaped, then cut apart. */
export interface Strip {
  readonly length: number;
  readonly pieces: readonly StripPiece[];
  /** All kerfs together: one after each piece. */
  readonly kerfs: number;
  /** Left in the hand at the end: the grip, or more. */
  readonly left: number;
}

/** All strips of one section. */
export interface StripPlan {
  /** `T1`, or `T1 T3` where two kinds share a section. */
  readonly marks: readonly string[];
  readonly material: string;
  readonly thickness: number;
  readonly width: number;
  readonly kerf: number;
  readonly kerfVerdict: Verdict;
  readonly strips: readonly Strip[];
  /** Against the shortest piece that is safe at each machine. */
  readonly safe: readonly SafeLength[];
}

export interface SafeLength {
  readonly machine: 'planer' | 'saw';
  readonly shortest: number | undefined;
  readonly needed: number;
  readonly verdict: Verdict;
}

/**
 * How many strips of which length the tenons are cut from.
 *
 * Each section gets its tenons, a share of spares (at least one) and one test piece. Pieces go longest first onto the first
 * strip with room; a strip is never shorter than 300 mm nor than the machines ask for, and keeps a grip that is not used.
 */
export function tenonStrips(
  kinds: readonly TenonKind[],
  shop: Shop,
  options: StripOptions = {},
): readonly StripPlan[] {
  const sections: TenonKind[][] = [];
  for (const kind of kinds) {
    const same = sections.find(([first]) => oneSection(first!, kind));
    if (same) same.push(kind);
    else sections.push([kind]);
  }
  return sections.map((section) => planOf(section, shop, options));
}

const oneSection = (a: TenonKind, b: TenonKind): boolean =>
  a.material === b.material &&
  Math.abs(a.thickness - b.thickness) < COPLANAR &&
  Math.abs(a.width - b.width) < COPLANAR;

function planOf(section: readonly TenonKind[], shop: Shop, options: StripOptions): StripPlan {
  const { longest = STOCK_PRACTICE.stripLongest, grip = STOCK_PRACTICE.grip } = options;
  const kerf = shop.sawKerf ?? STOCK_PRACTICE.kerf;
  const { planer, saw } = shop.shortest;
  const least = Math.max(STOCK_PRACTICE.stripLength, planer ?? 0, saw ?? 0);
  const pieces = piecesOf(section, options.spares ?? STOCK_PRACTICE.spares);
  const room = Math.max(longest, least, pieces[0]!.length + kerf + grip);
  const first = section[0]!;
  const strips = filled(pieces, room - grip, kerf).map((strip): Strip => {
    const used = strip.reduce((sum, piece) => sum + piece.length + kerf, 0);
    const length = Math.max(least, Math.ceil((used + grip) / 5) * 5);
    return { length, pieces: strip, kerfs: kerf * strip.length, left: length - used };
  });
  const shortest = Math.min(...strips.map((strip) => strip.length));
  return {
    marks: section.map((kind) => kind.mark),
    material: first.material,
    thickness: first.thickness,
    width: first.width,
    kerf,
    kerfVerdict: shop.sawKerf === undefined ? 'not verified' : 'passed',
    strips,
    safe: [safeAt('planer', planer, shortest), safeAt('saw', saw, shortest)],
  };
}

/** Longest first, so that they fill the strips well. */
function piecesOf(section: readonly TenonKind[], share: number): readonly StripPiece[] {
  const pieces = section.flatMap(({ mark, count, length }) => {
    const spares = Math.max(1, Math.ceil(count * share - SAME_POINT));
    return [
      ...Array.from({ length: count }, (): StripPiece => ({ mark, length, use: 'tenon' })),
      ...Array.from({ length: spares }, (): StripPiece => ({ mark, length, use: 'spare' })),
    ];
  });
  const { mark, length } = section.reduce((a, b) => (b.length > a.length ? b : a));
  return [{ mark, length, use: 'test piece' }, ...pieces.toSorted((a, b) => b.length - a.length)];
}

/** First fit: each piece onto the first strip whose room, kerfs counted, still takes it. */
function filled(
  pieces: readonly StripPiece[],
  room: number,
  kerf: number,
): readonly (readonly StripPiece[])[] {
  const strips: { used: number; pieces: StripPiece[] }[] = [];
  for (const piece of pieces) {
    const need = piece.length + kerf;
    const strip = strips.find((one) => one.used + need <= room + COPLANAR);
    if (strip) {
      strip.used += need;
      strip.pieces.push(piece);
    } else strips.push({ used: need, pieces: [piece] });
  }
  return strips.map((strip) => strip.pieces);
}

const safeAt = (
  machine: SafeLength['machine'],
  shortest: number | undefined,
  length: number,
): SafeLength => ({
  machine,
  shortest,
  needed: length,
  verdict: shortest === undefined ? 'not verified' : length >= shortest ? 'passed' : 'failed',
});
