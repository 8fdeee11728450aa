import type { Vec2 } from '../../frame/index.js';
import { segments } from '../../profile/index.js';
import { ON_TOP, ON_TOP_SINE } from '../../tolerances.js';
import { line } from './strokes.js';
import type { Entity, LineEntity } from './template.js';

type Piece = readonly [from: Vec2, to: Vec2];

/**
 * Straight marks without what lies on top of another line: a machine would run there twice. Lines that are cut, routed or
 * drilled stay whole; of two marks the first does.
 */
export function marksOffCuts(entities: readonly Entity[]): readonly Entity[] {
  const isMark = (one: Entity): one is LineEntity => one.kind === 'line' && one.layer === 'MARK';
  const taken = entities.filter((one) => !isMark(one)).flatMap(straights);
  return entities.flatMap((one): readonly Entity[] => {
    if (!isMark(one)) return [one];
    const left = taken.reduce<readonly Piece[]>(
      (pieces, other) => pieces.flatMap((piece) => without(piece, other)),
      [[one.from, one.to]],
    );
    taken.push(...left);
    return left.map(([start, end]) => line('MARK', start, end, one.dashing));
  });
}

/** The straight lines of an entity that a machine follows. */
function straights(one: Entity): readonly Piece[] {
  if (one.layer === 'NOTE' || one.layer === 'SCALE' || one.layer === 'LEGEND') return [];
  if (one.kind === 'line') return [[one.from, one.to]];
  if (one.kind !== 'profile') return [];
  return segments(one.profile).flatMap(({ kind, from, to }) =>
    kind === 'line' ? [[from, to] as const] : [],
  );
}

/** What is left of a line where it does not run along another. */
function without(piece: Piece, [start, end]: Piece): readonly Piece[] {
  const [from, to] = piece;
  const [run, along] = measured(piece);
  const [otherRun, otherAlong] = measured([start, end]);
  if (run < ON_TOP || otherRun < ON_TOP || Math.abs(cross(along, otherAlong)) > ON_TOP_SINE) return [piece];
  const stops = [start, end].map((p) => (p[0] - from[0]) * along[0] + (p[1] - from[1]) * along[1]);
  const low = Math.max(0, Math.min(...stops));
  const high = Math.min(run, Math.max(...stops));
  if (high - low < ON_TOP) return [piece];
  const at = (t: number): Vec2 => [from[0] + along[0] * t, from[1] + along[1] * t];
  const [x, y] = at((low + high) / 2);
  if (Math.abs(cross(otherAlong, [x - start[0], y - start[1]])) > ON_TOP) return [piece];
  const left: Piece[] = [];
  if (low > ON_TOP) left.push([from, at(low)]);
  if (run - high > ON_TOP) left.push([at(high), to]);
  return left;
}

function measured([from, to]: Piece): readonly [run: number, along: Vec2] {
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const run = Math.hypot(x, y);
  return [run, [x / run, y / run]];
}

const cross = (a: Vec2, b: Vec2): number => a[0] * b[1] - a[1] * b[0];
