import type { StrengthCode } from '../strength/index.js';
import type { FindingKind } from './finding-kind.js';

/** How a piece stands and what it bears; on what each rests stands with its figures, in `src/strength/codes.ts`. */
export const STRENGTH_KINDS: Readonly<Record<StrengthCode, Omit<FindingKind, 'basis'>>> = {
  'edge-outside-feet': {
    level: 'error',
    meaning:
      'An edge somebody may stand on lies outside the line round the feet (an error), or hardly inside it (a warning): the piece tips under a foot there.',
    limit: 'on the foot line; 10 mm inside it is wanted',
    cure: 'Move the feet out, or let the surface reach less far: a smaller setback or overhang, more rake or taper.',
  },
  'tips-sideways': {
    level: 'error',
    meaning:
      'A small push sideways tips the piece over while somebody stands or sits on an edge of it (a warning); a seat tips by itself (an error).',
    limit: '20 N at the height of the surface',
    cure: 'Move the feet out, make the piece lower, or let the surface reach less far.',
  },
  'tips-under-load': {
    level: 'warning',
    meaning: 'A table tips when somebody rests on its edge.',
    limit: '300 N on the edge',
    cure: 'Move the feet out, or let the top reach less far beyond them.',
  },
};
