import type { StrengthCode } from '../../strength/index.js';
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
  'board-breaks': {
    level: 'error',
    meaning:
      'A board bends so much under the load its use asks for that it may crack: past what 95 of 100 clear pieces bear (an error), or past what a person should count on (a warning).',
    limit: 'the bending strength of the wood',
    cure: 'Take a thicker board, bring its supports nearer together, or choose a stronger wood.',
  },
  'board-shears': {
    level: 'error',
    meaning: 'A board may split along its grain beside a support under the load its use asks for.',
    limit: 'the shear strength of the wood',
    cure: 'Take a thicker or wider board, or a stronger wood.',
  },
  'board-crushed': {
    level: 'error',
    meaning: 'A board is pressed into where it lies on its support under the load its use asks for.',
    limit: 'the strength of the wood pressed across its grain',
    cure: 'Make the support thicker, or choose a harder wood.',
  },
  'board-gives': {
    level: 'warning',
    meaning: 'A step or a seat gives so much under a person that it does not feel firm.',
    limit: 'a 200th of its span',
    cure: 'Take a thicker board, or bring its supports nearer together.',
  },
  'shelf-sags': {
    level: 'error',
    meaning: 'A shelf sags too far under its full load (an error), or so far that it is seen (a warning).',
    limit: '1/144 of its span under the full load, 1/600 under books when new',
    cure: 'Take a thicker shelf, shorten it, or put a support below its middle.',
  },
  'joint-pulled': {
    level: 'warning',
    meaning:
      'The test load pulls tenons more than glue and wood hold by our estimate, or a person pulls them more than they may hold for years of use.',
    limit: 'the weaker side of the joint at 5 % values; 0.565 of it in daily use',
    cure: 'Make the mortises deeper or the tenons wider, let a surface overhang less, or choose a stronger wood.',
  },
  'joint-racked': {
    level: 'error',
    meaning:
      'A push sideways at the height of a surface bends a joint more than it holds by our estimate (an error), or more than it holds for years of use (a warning).',
    limit: 'pull of the tenons times their way to the pressed edge of the shoulder; 0.565 of it is wanted',
    cure: 'Add a stretcher or make it wider, take thicker boards, or make the mortises deeper.',
  },
  'tenons-sheared': {
    level: 'error',
    meaning: 'A force across its tenons shears them or their glue off, or crushes the wood beside them.',
    limit:
      'the shear strength of the tenons and of their glued cheeks, the strength of the boards pressed across the grain',
    cure: 'Give the joint more or wider tenons, or go deeper.',
  },
  'piece-sways': {
    level: 'note',
    meaning: 'How far the piece sways when it is pushed sideways; told for information in the papers.',
    limit: 'none',
    cure: 'Add a stretcher, or make the rails wider.',
  },
  'held-across-grain': {
    level: 'error',
    meaning:
      'Glue holds a wide board across its grain, so that it cannot move with the seasons: it cracks, or breaks its joints.',
    limit: '150 mm of held width; 80 mm is wanted',
    cure: 'Make the glued width narrower, use fewer tenons in the row, or hold the board by buttons, slotted screws or a groove.',
  },
  'held-cracks': {
    level: 'warning',
    meaning: 'A board that is held across its grain dries so far that its own shrinking tears it.',
    limit: 'the loss of moisture at which mean wood of its species cracks',
    cure: 'Glue drier wood, take quarter-sawn wood, or let the board move.',
  },
  'tenon-swells': {
    level: 'error',
    meaning:
      'A tenon swells across its grain more than its mortise gives, and bursts it or opens the joint: an error when the slack is less than that, a warning when little is left.',
    limit: 'what the tenon swells more than its mortise; 0.5 mm more is wanted',
    cure: 'Give the mortises more edge clearance, or make the tenons narrower.',
  },
  'tenon-meets-bottom': {
    level: 'error',
    meaning:
      'A mortise gets shallower as its board dries, until the tenon meets its bottom and opens the shoulder.',
    limit: 'what the mortise loses of its depth; 0.5 mm of air is wanted',
    cure: 'Leave a larger end gap.',
  },
  'shoulder-opens': {
    level: 'warning',
    meaning: 'A board dries and draws back from the shoulder of the board its mortise holds.',
    limit: '0.5 mm',
    cure: 'Make the mortise shallower, or glue drier wood.',
  },
  'no-room-to-move': {
    level: 'error',
    meaning: 'A board held by buttons, slotted screws or grooves has less room than it moves in a year.',
    limit: 'the movement of its wood in the climate of the place',
    cure: 'Leave travel or slack out to have it worked out, or give more.',
  },
  'glued-out-of-place': {
    level: 'warning',
    meaning:
      'The wood is glued wetter or drier than it will ever be where it stands: every joint is strained for good.',
    limit: 'the moistures of the climate of the place',
    cure: 'Let the wood lie where the piece will stand until its weight stays the same.',
  },
  'finger-opening': {
    level: 'note',
    meaning: 'In a piece a child uses, a small finger may go into an opening or a gap and stay there.',
    limit: 'no wider than 5 mm, or at least 12 mm',
    cure: 'Close it, or make it wider.',
  },
  'head-opening': {
    level: 'note',
    meaning: 'In a piece a child uses, a small head may go into an opening or a gap and stay there.',
    limit: 'no wider than 89 mm, or at least 230 mm',
    cure: 'Close it with a rail, make it narrower, or make it wider.',
  },
};
