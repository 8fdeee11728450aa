import type { GapCode } from '../../assembly/index.js';
import { MEASURED, COMMON_PRACTICE as PRACTICE } from './basis.js';
import type { FindingKind } from './finding-kind.js';

/** Gaps a model asks to be kept open between pieces that move. */
export const GAP_KINDS: Readonly<Record<GapCode, FindingKind>> = {
  'knob-near-base': {
    level: 'error',
    meaning: 'A knob stands so near the router that fingers cannot turn it.',
    limit: 'the clearance the jig is asked to keep round its knobs',
    basis: PRACTICE,
    cure: 'Move the slots outwards, or take smaller knobs.',
  },
  'knobs-touch': {
    level: 'error',
    meaning: 'The knobs of the two rails meet when the rails are close.',
    limit: '2 mm between them',
    basis: PRACTICE,
    cure: 'Take smaller knobs or wider rails.',
  },
  'cutter-near-rail': {
    level: 'error',
    meaning: 'The turning cutter can reach a rail.',
    limit: '2 mm of air',
    basis: PRACTICE,
    cure: 'Take a thinner cutter or thicker work.',
  },
  'cutter-near-plate': {
    level: 'error',
    meaning: 'The turning cutter can reach the wall of its opening in the plate, or chips have no way out.',
    limit: '1 mm of air',
    basis: PRACTICE,
    cure: 'Make the opening larger.',
  },
  'bolt-binds-in-slot': {
    level: 'error',
    meaning: 'A bolt of a rail binds in its slot and the rail does not slide.',
    limit: '0.1 mm of air',
    basis: PRACTICE,
    cure: 'Lengthen the slots, or make them wider.',
  },
  'screw-head-proud': {
    level: 'error',
    meaning: "A screw's head stands in the face the rails slide on.",
    limit: '0.2 mm below the face',
    basis: PRACTICE,
    cure: 'Countersink deeper.',
  },
};

/** What can be wrong with single boards, with pieces beside each other and with a jig. */
export const BOARD_KINDS = {
  'pieces-overlap': {
    level: 'error',
    meaning: 'Two pieces are in one place.',
    limit: '0.01 mm³',
    basis: MEASURED,
    cure: 'Move or shorten one of them until they only touch.',
  },
  'board-joined-to-nothing': {
    level: 'warning',
    meaning: 'A board hangs in the air: no joint, groove, fastening or hardware holds it.',
    limit: 'one thing that holds it',
    basis: MEASURED,
    cure: 'Join it to a board it touches, hold it in a groove, fasten it, or leave it out.',
  },
  'bridge-thin': {
    level: 'error',
    meaning:
      'An opening, hole or slot leaves little wood beside it (a warning), or so little that it breaks (an error).',
    limit: 'a few millimetres, more beside a slot than beside a hole',
    basis: PRACTICE,
    cure: 'Move it, make it smaller, or make the board larger.',
  },
  'range-not-reached': {
    level: 'error',
    meaning: 'Moving pieces do not come as near, or as far apart, as they must.',
    limit: 'the range asked for',
    basis: MEASURED,
    cure: 'Follow the remedy of the model: longer slots, or a larger plate.',
  },
  'bolt-too-short': {
    level: 'error',
    meaning: 'A bolt enters its nut or knob too little to hold.',
    limit: 'one diameter of thread',
    basis: PRACTICE,
    cure: 'Use the next longer bolt, or let its head in deeper.',
  },
  'bolt-too-long': {
    level: 'error',
    meaning: 'A bolt meets the bottom of its hole before it clamps.',
    limit: '1 mm of air at its tip',
    basis: PRACTICE,
    cure: 'Use the next shorter bolt, a thicker washer or a deeper thread.',
  },
  'template-vanishes': {
    level: 'warning',
    meaning: 'A board is too narrow for a template followed with this guide bush: no template of it is made.',
    limit: 'an outline that is left after the offset',
    basis: MEASURED,
    cure: 'Use a smaller bush, or follow the outline with a bearing.',
  },
  'corner-too-tight': {
    level: 'warning',
    meaning: 'An inside corner is tighter than the cutter or the bush can go round.',
    limit: "the cutter's or the bush's radius",
    basis: PRACTICE,
    cure: 'Make the radius larger, use a smaller cutter or bush, or finish the corner by hand.',
  },
  'volume-differs': {
    level: 'error',
    meaning: "A board's solid holds more or less wood than its data say: cavities meet or break out.",
    limit: 'a millionth of the volume, and what curves are rounded to',
    basis: MEASURED,
    cure: 'Move or shorten the mortises, holes or slots that meet.',
  },
  'cutter-centre-assumed': {
    level: 'warning',
    meaning:
      'The holes in the router base were measured from each other only, so where the cutter stands is a guess.',
    limit: 'one distance to the centre of the cutter from each hole',
    basis: MEASURED,
    cure: 'Measure each hole from a straight pin in the collet too.',
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
