import type { LimitCode } from '../../shop/index.js';
import { MEASURED, COMMON_PRACTICE as PRACTICE } from './basis.js';
import type { FindingKind } from './finding-kind.js';

/** What the router, the jig or the cutter cannot do. */
export const LIMIT_KINDS: Readonly<Record<LimitCode, Omit<FindingKind, 'level'>>> = {
  'grip-too-wide': {
    meaning: 'The work is thicker than the two rails of the jig open.',
    limit: "the jig's widest opening",
    basis: MEASURED,
    cure: "Lengthen the jig's slots, or hold the work against one rail.",
  },
  'grip-too-narrow': {
    meaning: 'The work is thinner than the two rails of the jig close.',
    limit: "the jig's narrowest opening",
    basis: MEASURED,
    cure: 'Lay a straight packing beside the work, or use smaller knobs or wider rails.',
  },
  'rail-reach': {
    meaning: 'The face the work is set against is farther from the cutter than a rail reaches.',
    limit: "the rail's farthest place",
    basis: MEASURED,
    cure: "Lengthen the jig's slots, or guide the router along a board.",
  },
  'rail-near-cutter': {
    meaning: 'The rail would have to stand where the cutter turns.',
    limit: 'half the cutter and its air',
    basis: PRACTICE,
    cure: 'Lay a straight packing between rail and work, or take a thinner cutter.',
  },
  'plunge-travel': {
    meaning: 'The router cannot plunge through the plate to the bottom of the mortise.',
    limit: "the router's plunge travel in the shop file",
    basis: 'the router in the shop file',
    cure: 'Make the mortise shallower or the plate thinner.',
  },
  'cutting-length': {
    meaning: "The cutter's edges end above the bottom of the mortise, and its shank rubs on the walls.",
    limit: "the cutter's cutting length in the shop file",
    basis: 'the cutter in the shop file',
    cure: 'Take a cutter with longer edges, or make the mortise shallower.',
  },
  'cutter-length': {
    meaning: 'The cutter is too short to be gripped and still reach the bottom of the mortise.',
    limit: "the cutter's overall length in the shop file",
    basis: 'from memory: two shank diameters in the collet',
    cure: 'Take a longer cutter, a thinner plate or a shallower mortise.',
  },
  'guide-wood': {
    meaning: 'A guide board finds too little wood beside the mortise to be clamped on.',
    limit: '30 mm of wood',
    basis: PRACTICE,
    cure: 'Clamp a block of the same height beside the work, or open the jig so that a rail reaches.',
  },
  'template-meets-work': {
    meaning: 'Wood that stands above the mouth is in the way of a windowed template.',
    limit: 'the clear way round the mouth',
    basis: MEASURED,
    cure: 'Cut the mortise before the parts are glued together, or by hand.',
  },
  'plate-meets-work': {
    meaning: "Wood that stands above the mouth is in the way of the jig's plate.",
    limit: 'the clear way along the travel',
    basis: MEASURED,
    cure: 'Cut the mortise while that wood is a piece of its own, use a smaller plate, or chop it by hand.',
  },
  'base-meets-work': {
    meaning: "Wood that stands above the mouth is in the way of the router's base.",
    limit: 'the clear way along the travel',
    basis: MEASURED,
    cure: 'Cut the mortise while that wood is a piece of its own, use a smaller base, or chop it by hand.',
  },
};

/** What the bench cannot do: set-ups, tools, clamps, the order of the glue-up. */
export const SHOP_KINDS = {
  'no-glue-up-order': {
    level: 'error',
    meaning: 'No order was found in which the boards can be brought together: their joints lock each other.',
    limit: 'a free way for one group of boards after the other',
    basis: MEASURED,
    cure: 'Turn the axes of the joints named until those closed together run one way, leave more clearance, or leave one out.',
  },
  'joint-sprung': {
    level: 'note',
    meaning: 'A joint goes together only when a board is sprung aside a little.',
    limit: 'what the clearances take',
    basis: 'elementary mechanics: a cantilever pushed aside at its end',
    cure: 'Push it over by hand while it goes in, leave more clearance, or turn the axis of the joint.',
  },
  'groove-not-cut': {
    level: 'error',
    meaning:
      'The tools at hand cannot cut a groove: no cutter is as wide, or nothing reaches its bottom or its fence.',
    limit: 'what router, cutters and fence in the shop file reach',
    basis: 'the shop file',
    cure: 'Make the groove as wide as a cutter at hand, shallower or nearer to its fence, or add a tool to the shop file.',
  },
  'clamp-too-short': {
    level: 'warning',
    meaning: 'No clamp at hand opens as far as a stage of the glue-up needs.',
    limit: 'the longest clamp of the shop file',
    basis: 'the clamps the shop file names',
    cure: 'Borrow or buy clamps that open so far and add them to the shop file, or hold the joint with a strap.',
  },
  'clamp-throat-too-short': {
    level: 'warning',
    meaning: 'No clamp at hand that opens far enough reaches as far in from its bar.',
    limit: 'the deepest throat among those that open so far',
    basis: 'the clamps the shop file names',
    cure: 'Borrow or buy clamps with a deeper throat and add them to the shop file, or hold the joint with a strap.',
  },
  'clamps-too-few': {
    level: 'warning',
    meaning: 'A stage of the glue-up takes more clamps at once than there are.',
    limit: 'the clamps of the shop file that would do',
    basis: 'the clamps the shop file names',
    cure: 'Borrow or buy more and add them to the shop file, or hold a joint with a strap.',
  },
  'cutter-not-at-hand': {
    level: 'warning',
    meaning: 'A joint wants a cutter the shop does not have.',
    limit: 'the cutters of the shop file',
    basis: 'the cutters the shop file names',
    cure: 'Use the nearest at hand, or get the cutter and write it in the shop file.',
  },
  'mortise-without-mouth': {
    level: 'error',
    meaning:
      'A mortise has no flat face round its mouth at any stage, so that neither a jig nor a router can stand on it.',
    limit: 'a face square to the mortise',
    basis: MEASURED,
    cure: "Turn the joint's axis square to the face, move it onto a flat face, or cut it by hand.",
  },
  'set-up-face-gone': {
    level: 'error',
    meaning: 'A set-up takes a distance from a face the board does not have yet, or no longer has.',
    limit: 'the face at the stage of the cut',
    basis: MEASURED,
    cure: 'Cut the mortise at an earlier stage.',
  },
  'stops-too-near': {
    level: 'error',
    meaning: 'The stops of a set-up leave no room for what travels between them.',
    limit: 'half of what travels',
    basis: MEASURED,
    cure: 'Set them for what travels between them.',
  },
  'set-up-overlaps': {
    level: 'error',
    meaning: 'Laid out as its card says, two pieces of a set-up are in one place.',
    limit: '0.01 mm³',
    basis: MEASURED,
    cure: 'Cut it at an earlier stage, or hold it another way.',
  },
  'set-up-off-bearing': {
    level: 'error',
    meaning: 'Laid out as its card says, a piece does not bear on what it must bear on.',
    limit: '0.02 mm',
    basis: MEASURED,
    cure: 'Set it again: its distance and the face it is taken from do not agree.',
  },
  'cut-off-mortise': {
    level: 'error',
    meaning: 'What the cutter sweeps between the stops is not the mortise of the design.',
    limit: 'a thousandth of its volume',
    basis: MEASURED,
    cure: 'Take the distances of rails, stops and centre line again from the model.',
  },
  'plate-tips': {
    level: 'error',
    meaning: "What lies under the plate or base ends before the cutter's centre: it tips.",
    limit: '25 mm beyond the centre',
    basis: PRACTICE,
    cure: 'Clamp a support block flush with the mouth there.',
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
