import type { GapCode } from '../assembly/index.js';
import type { LimitCode } from '../shop/index.js';
import { STRENGTH_BASES, type StrengthCode } from '../strength/index.js';
import { MEASURED, COMMON_PRACTICE as PRACTICE } from './basis.js';
import type { FindingKind, Level } from './finding-kind.js';
import { STRENGTH_KINDS } from './strength-kinds.js';

export type { FindingKind, Level };

const SHARE =
  'one third: Fairham, Woodwork Joints, general rule after fig. 177; the range round it: common practice, no source';

/** Gaps a model asks to be kept open between pieces that move. */
const GAPS: Readonly<Record<GapCode, FindingKind>> = {
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

/** What the router, the jig or the cutter cannot do. */
const LIMITS: Readonly<Record<LimitCode, Omit<FindingKind, 'level'>>> = {
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

/** What the checks themselves find. */
const FOUND = {
  'tenon-bottoms-out': {
    level: 'error',
    meaning: 'A tenon meets the bottoms of its mortises before the shoulders close.',
    limit: 'the air asked for at the end of the tenon',
    basis: MEASURED,
    cure: 'Shorten the tenon or deepen a mortise by the figure told.',
  },
  'tenon-end-gap': {
    level: 'error',
    meaning:
      'A tenon leaves less room at the bottom of its mortises than was asked for, and glue has no place to go.',
    limit: 'the air asked for at the end of the tenon',
    basis: MEASURED,
    cure: 'Shorten the tenon or deepen a mortise by the figure told.',
  },
  'tenon-too-tight': {
    level: 'error',
    meaning: 'A tenon has less air on its cheeks than was asked for.',
    limit: 'the cheek clearance asked for',
    basis: MEASURED,
    cure: 'Plane the tenon thinner or use a wider cutter.',
  },
  'tenon-loose': {
    level: 'warning',
    meaning: 'A tenon has more air on its cheeks than glue bridges well.',
    limit: 'the widest glue line',
    basis: PRACTICE,
    cure: 'Make the tenon thicker, or lower the cheek clearance.',
  },
  'tenon-edge-gap': {
    level: 'error',
    meaning: 'A tenon is nearly as wide as its mortise is long (a warning), or wider (an error).',
    limit: 'the room kept for glue and air at its edges',
    basis: PRACTICE,
    cure: 'Make the tenon narrower or the mortise longer.',
  },
  'tenons-meet': {
    level: 'error',
    meaning: 'The mitred ends of two tenons that meet in a board come too near each other.',
    limit: 'the gap asked for between them',
    basis: MEASURED,
    cure: 'Saw their ends shorter.',
  },
  'mortises-out-of-line': {
    level: 'error',
    meaning: 'The two mortises of a tenon do not lie on one line: the tenon cannot go in.',
    limit: '0.01 mm and 0.01°',
    basis: MEASURED,
    cure: 'Cut both from one seat: move or turn one of them.',
  },
  'shoulder-open': {
    level: 'error',
    meaning: 'The faces round a tenon do not close when it is home.',
    limit: '0.01 mm',
    basis: MEASURED,
    cure: 'Move or turn a board until the two faces touch round the tenon.',
  },
  'mortise-breaks-through': {
    level: 'error',
    meaning: 'A mortise comes out at a face, or runs into another cavity.',
    limit: 'wood all round',
    basis: MEASURED,
    cure: 'Make it shallower, shorter or narrower, or move it into thicker wood.',
  },
  'wall-thin': {
    level: 'error',
    meaning:
      'Little wood is left beside a mortise or behind its bottom (a warning), or so little that it breaks (an error).',
    limit: '6 mm is usual',
    basis: PRACTICE,
    cure: 'Use a thinner cutter or thicker stock, or make the mortise shallower.',
  },
  'groove-meets-mortise': {
    level: 'error',
    meaning: 'A groove runs into a mortise.',
    limit: 'wood between them',
    basis: MEASURED,
    cure: 'Stop the groove before the mortise, or move one of them.',
  },
  'groove-near-mortise': {
    level: 'warning',
    meaning: 'Little wood is left between a groove and a mortise.',
    limit: '6 mm is usual',
    basis: PRACTICE,
    cure: 'Stop the groove earlier, make it shallower, or move the mortise.',
  },
  'panel-no-slack': {
    level: 'error',
    meaning: 'A panel has no room in its grooves to swell across the grain: it bursts its frame.',
    limit: 'the movement of its wood over the year',
    basis: MEASURED,
    cure: 'Make the panel narrower or a groove deeper by the figure told.',
  },
  'panel-no-end-slack': {
    level: 'error',
    meaning: 'A panel has no room in its grooves along the grain: it keeps the joints of its frame open.',
    limit: 'a little air at each end',
    basis: MEASURED,
    cure: 'Make the panel shorter or a groove deeper by the figure told.',
  },
  'panel-drops-out': {
    level: 'error',
    meaning: 'A panel pushed to one side leaves the groove on the other.',
    limit: '2 mm kept in the groove',
    basis: PRACTICE,
    cure: 'Make the panel larger and the groove deeper.',
  },
  'panel-tight': {
    level: 'error',
    meaning: "A panel's tongue has less air in its groove than was asked for.",
    limit: 'the air asked for',
    basis: MEASURED,
    cure: 'Make the tongue thinner or the groove wider.',
  },
  'panel-loose': {
    level: 'warning',
    meaning: "A panel's tongue has so much air in its groove that it rattles.",
    limit: '1 mm',
    basis: PRACTICE,
    cure: 'Make the tongue thicker or the groove narrower.',
  },
  'screw-shows': {
    level: 'error',
    meaning: 'A screw comes through, or nearly, on the side that is seen.',
    limit: '3 mm of wood under its tip',
    basis: PRACTICE,
    cure: 'Take a shorter screw.',
  },
  'screw-short': {
    level: 'error',
    meaning: 'A screw bites too little to hold.',
    limit: 'two and a half times its thickness',
    basis: PRACTICE,
    cure: 'Take a longer screw, or make the board it bites in thicker.',
  },
  'fastening-stuck': {
    level: 'error',
    meaning: 'A button or a slotted screw does not let the wood move as far as it will.',
    limit: 'the movement of its wood over the year',
    basis: MEASURED,
    cure: 'Make the slot longer or deeper, or the tongue shorter.',
  },
  'button-slips-out': {
    level: 'error',
    meaning: 'The tongue of a button leaves its slot when the wood has moved away.',
    limit: 'a little tongue kept in the slot',
    basis: PRACTICE,
    cure: 'Make the slot deeper and the tongue longer.',
  },
  'mortise-deep': {
    level: 'warning',
    meaning: 'A mortise goes deeper into a wide face than is usual.',
    limit: 'half the thickness, two thirds in a mitre',
    basis: PRACTICE,
    cure: 'Make it shallower or the board thicker.',
  },
  'end-inset': {
    level: 'warning',
    meaning: 'Little wood is left past the end of a mortise: it may split out (an error where it breaks).',
    limit: '12.7 mm (half an inch), or what was asked for',
    basis: PRACTICE,
    cure: 'Make the mortise shorter or the board wider.',
  },
  'web-thin': {
    level: 'warning',
    meaning: 'Little wood is left between two mortises of a row.',
    limit: '12.7 mm (half an inch), or what was asked for',
    basis: PRACTICE,
    cure: 'Take fewer tenons, or narrower ones.',
  },
  'tenon-thin': {
    level: 'warning',
    meaning: 'A tenon is thin for its boards.',
    limit: 'a quarter of the thinner board; a third is best',
    basis: SHARE,
    cure: 'Use a wider cutter.',
  },
  'tenon-thick': {
    level: 'warning',
    meaning: 'A tenon is thick for its boards and leaves weak walls.',
    limit: 'half of the thinner board; a third is best',
    basis: SHARE,
    cure: 'Use a thinner cutter or thicker boards.',
  },
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
  'patch-without-tenon': {
    level: 'note',
    meaning: 'Two boards also touch on a patch where no tenon has room.',
    limit: 'room for one tenon',
    basis: MEASURED,
    cure: 'Make the patch larger, or say that one patch is enough.',
  },
  'made-way': {
    level: 'note',
    meaning:
      'Tenons were shortened, butted, staggered or mitred because those of another joint stand in their way.',
    limit: 'the walls the joints keep',
    basis: PRACTICE,
    cure: 'Nothing need be done; choose the way yourself, or give the joint depths.',
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

/** Stable names of everything a check can find. */
export type FindingCode =
  | keyof typeof FOUND
  | GapCode
  | StrengthCode
  | `cannot-be-cut-${LimitCode}`
  | `held-another-way-${LimitCode}`;

const limited = Object.entries(LIMITS) as [LimitCode, (typeof LIMITS)[LimitCode]][];

/** Every kind of finding: what it means, its limit, what the limit rests on, and what ends it. */
export const FINDING_KINDS = {
  ...FOUND,
  ...GAPS,
  ...Object.fromEntries(
    Object.entries(STRENGTH_KINDS).map(([code, kind]) => [
      code,
      { ...kind, basis: STRENGTH_BASES[code as StrengthCode] },
    ]),
  ),
  ...Object.fromEntries(
    limited.map(([code, kind]) => [
      `cannot-be-cut-${code}`,
      {
        level: 'error',
        ...kind,
        meaning: `${kind.meaning} The mortise cannot be cut with the router and jig at hand.`,
      },
    ]),
  ),
  ...Object.fromEntries(
    limited.map(([code, kind]) => [
      `held-another-way-${code}`,
      { level: 'note', ...kind, meaning: `${kind.meaning} The mortise is cut another way.` },
    ]),
  ),
} as Readonly<Record<FindingCode, FindingKind>>;
