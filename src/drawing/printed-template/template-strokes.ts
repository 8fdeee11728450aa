import { type Profile, segments } from '../../profile/index.js';
import { disc, type LineKind, letters, type Stroke, stroke } from '../sheet/index.js';
import type { Dashing, Entity, Layer } from '../template/index.js';

/** How a template's layers are drawn. */
const LINES: Readonly<Record<Layer, 'template' | 'dimension'>> = {
  CUT: 'template',
  POCKET: 'template',
  DRILL: 'template',
  MARK: 'dimension',
  NOTE: 'dimension',
  SCALE: 'dimension',
  LEGEND: 'dimension',
};

const DASHED = { far: 'hidden', centre: 'centre' } as const satisfies Record<Dashing, LineKind>;

/** A template's entity as strokes of a sheet; arcs stay arcs. */
export function strokesOfEntity(entity: Entity): readonly Stroke[] {
  if (entity.kind === 'text') return [letters(entity.at, entity.text, { rotationDeg: entity.rotationDeg })];
  const kind = entity.dashing === undefined ? LINES[entity.layer] : DASHED[entity.dashing];
  switch (entity.kind) {
    case 'line':
      return [stroke(kind, entity.from, entity.to)];
    case 'circle':
      return [disc(kind, entity.centre, entity.radius)];
    case 'profile':
      return profileStrokes(entity.profile, kind);
  }
}

/** An outline as lines and true arcs of one kind. */
export const profileStrokes = (profile: Profile, line: LineKind): readonly Stroke[] =>
  segments(profile).map((piece): Stroke => {
    if (piece.kind === 'line') return stroke(line, piece.from, piece.to);
    const { centre, radius, startDeg, includedDeg, sense } = piece;
    return {
      kind: 'arc',
      line,
      centre,
      radius,
      startDeg: sense === 'clockwise' ? startDeg - includedDeg : startDeg,
      sweepDeg: includedDeg,
    };
  });
