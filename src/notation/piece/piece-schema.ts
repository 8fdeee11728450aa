import * as z from 'zod';
import { materialNames } from '../../tables/index.js';
import { USE_WORDS } from '../places/index.js';

/** Words or a figure, as an editor's reader of YAML hands them on. */
const said = (help: string) => z.union([z.string(), z.number()]).describe(help);

/** A place, or a list of them. */
const saidOrSeveral = (help: string) => z.union([z.string(), z.number(), z.array(z.string())]).describe(help);

const yes = (help: string) => z.union([z.boolean(), z.string()]).describe(help);

const oneOf = <T extends readonly [string, ...string[]]>(words: T, help: string) =>
  z.enum(words as unknown as [string, ...string[]]).describe(help);

const LOOKS = ['left', 'right', 'front', 'back', 'up', 'down'] as const;

/** One shape or a list of them. */
const shapes = <Shape extends z.ZodRawShape>(shape: Shape, help: string) =>
  z.union([z.strictObject(shape), z.array(z.strictObject(shape))]).describe(help);

const side = said('which of its six sides: left, right, front, back, bottom or top');
const wide = said('how wide');
const deep = said('how deep, into the wood');

const SHAPES = {
  taper: shapes(
    {
      sides: said('sides that lose wood, joined by and: right and back'),
      to: said('what is left at the end'),
      at: said('the end that grows thinner: bottom').optional(),
      starts: said('where it starts: 100 below top').optional(),
    },
    'grows thinner towards an end',
  ),
  slope: shapes(
    {
      side,
      from: said('where the side begins'),
      to: said('where it ends'),
      towards: said('the way it runs').optional(),
    },
    'a side that slopes from one place to another',
  ),
  bevel: shapes(
    {
      corner: said('two sides that meet, like back bottom').optional(),
      arris: said('the same, for an edge along the grain').optional(),
      long: said('how far along the grain, or the second side'),
      deep,
    },
    'a corner or an arris taken off',
  ),
  arch: shapes(
    {
      side,
      high: said('how high').optional(),
      feet: said('wood left at each end').optional(),
      radius: said('instead of how high').optional(),
    },
    'a side hollowed between two feet',
  ),
  notch: shapes(
    {
      corner: said('two sides that meet, like front bottom'),
      long: said('along the grain'),
      deep,
      radius: said('of its inner corner').optional(),
    },
    'a square piece taken out of a corner',
  ),
  round: shapes(
    { corners: said('all, or corners joined by and'), radius: said('of the corners') },
    'corners rounded',
  ),
  opening: shapes(
    { long: said('along the grain'), wide, middle: saidOrSeveral('where its middle is').optional() },
    'an opening through the face, with round ends; as long as wide it is a round hole',
  ),
  groove: shapes(
    {
      side,
      wide,
      deep,
      from: said('its distance from the reference face').optional(),
      stops: said('wood left at the ends').optional(),
    },
    'a groove along a side',
  ),
  holes: shapes(
    {
      side,
      wide: said('diameter'),
      deep,
      middle: saidOrSeveral('where the first is').optional(),
      every: said('from one to the next; without a count they fill the side').optional(),
      count: said('how many').optional(),
      rows: said('how many rows').optional(),
    },
    'holes for pins or screws',
  ),
} as const;

const place = (name: string) =>
  said(`where its ${name} stands: leg, 6 short of leg, 20 past back of rail, 60 above floor`).optional();

const angles = (help: string) =>
  z
    .strictObject(
      Object.fromEntries(['left', 'right', 'front', 'back'].map((way) => [way, said('an angle').optional()])),
    )
    .describe(help)
    .optional();

const BOARD = z.strictObject({
  grain: oneOf(['left-right', 'front-back', 'up'], 'the way its grain runs'),
  face: oneOf(LOOKS, 'where its reference face looks, a wide side'),
  edge: oneOf(LOOKS, 'where its reference edge looks: down, else front, else left').optional(),
  long: said('its size along the grain').optional(),
  wide: said('its size across the grain').optional(),
  thick: said('its thickness').optional(),
  wood: said('its wood, when another').optional(),
  use: oneOf(
    USE_WORDS as [string, ...string[]],
    'what its face that looks up is for: what it bears follows from it',
  ).optional(),
  when: yes('a dimension that is yes or no, or a comparison: the board is left out when it is no').optional(),
  left: place('left side'),
  right: place('right side'),
  front: place('front'),
  back: place('back'),
  bottom: place('underside'),
  top: place('top'),
  middle: saidOrSeveral('where its middle is: middle of seat fills every direction that is open').optional(),
  between: saidOrSeveral('two boards its ends are cut to: left leg and right leg').optional(),
  into: said('how far it goes into both, as a panel into grooves').optional(),
  grooved: said('how deep the grooves are that take it').optional(),
  evenly: said('copies with equal gaps: between bottom board and top board').optional(),
  repeat: said('how many copies; n counts them in formulas').optional(),
  like: said('every direction still open is as large as that board').optional(),
  mirrored: said(
    'left-right, front-back or up-down, joined by and: about the middle of the piece',
  ).optional(),
  around: z
    .union([z.record(z.string(), said('')), z.string()])
    .describe('copies round a middle')
    .optional(),
  leans: angles('its foot goes that way, each angle as seen square from front and side'),
  slopes: angles('a level board of which that side is lower'),
  head: z.record(z.string(), said('a place')).describe('places of the head of a leaning board').optional(),
  foot: z.record(z.string(), said('a place')).describe('places of the foot of a leaning board').optional(),
  plumb: yes('between leaning boards it stands plumb').optional(),
  staves: said('how many boards are glued edge to edge to make it').optional(),
  ...(Object.fromEntries(Object.entries(SHAPES).map(([key, shape]) => [key, shape.optional()])) as {
    [K in keyof typeof SHAPES]: z.ZodOptional<(typeof SHAPES)[K]>;
  }),
});

const JOINT = z.strictObject({
  tenons: said('how many at each meeting').optional(),
  rows: said('rows of tenons side by side').optional(),
  cutter: said('diameter of the cutter').optional(),
  wide: said('width of a tenon').optional(),
  thick: said('thickness of a tenon').optional(),
  inset: said('wood kept at each end of the seat').optional(),
  web: said('wood between two mortises').optional(),
  spacing: said('from one tenon to the next').optional(),
  across: said('how far from the middle of the seat, across').optional(),
  along: said('the board whose edge the mortises run along, or a shift along it').optional(),
  turned: yes('mortises run across the seat').optional(),
  places: saidOrSeveral('where the tenons are along the seat').optional(),
  patches: said('largest, or numbers of the places they touch at').optional(),
  meet: oneOf(['shorten', 'butt', 'stagger', 'mitre'], 'what to do where mortises meet').optional(),
  runs: said('square, or along a board').optional(),
  mitred: yes('both boards are cut at the corner').optional(),
  'cheek clearance': said('between tenon and mortise at the cheeks').optional(),
  'edge clearance': said('between tenon and mortise at the edges').optional(),
  'end gap': said('below the ends of a tenon').optional(),
});

const HELD = z.strictObject({
  by: oneOf(['buttons', 'slotted screws'], 'what holds it so that it can move'),
  every: said('from one to the next, at most').optional(),
  count: said('how many').optional(),
  travel: said('how far it may move').optional(),
  screw: said('diameter of the screws').optional(),
  long: said('length of the screws').optional(),
  below: said('from the face to the slot').optional(),
  wide: said('width of the slot').optional(),
  deep: said('depth of the slot').optional(),
});

const USED_BY = z.strictObject({
  heaviest: said('the weight of the heaviest person: 110 kg').optional(),
  children: yes('children use it too: gaps are looked at for small fingers and heads').optional(),
});

/** What a piece's file may hold, as an editor is told: one schema gives completion, help and the marks below slips. */
const PIECE_SCHEMA = z
  .strictObject({
    design: z
      .string()
      .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/)
      .describe('name of the folder: small letters, digits, hyphens'),
    title: z.string().describe('title on every paper').optional(),
    about: z.string().describe('one sentence: what it is').optional(),
    notes: z
      .union([z.string(), z.array(z.string())])
      .describe('sentences for the papers')
      .optional(),
    units: oneOf(['mm', 'in'], 'what bare numbers are').optional(),
    wood: z
      .string()
      .describe(`a wood of the table, or a dimension that is one of them: ${materialNames.join(', ')}`),
    piece: z
      .array(said('a size'))
      .length(3)
      .describe('the box it fills: left to right, front to back, floor to top'),
    dimensions: z
      .record(
        z.string(),
        said(
          '800 from 400 to 1000; what it is. 800 or 32 in from 400 to 1000; … (32 in for who works in inches) how many 3 from 1 to 6; … yes; … one of white oak or white ash; … as built 912; …',
        ),
      )
      .describe('what can be changed; each is an option')
      .optional(),
    'worked out': z
      .record(z.string(), said('a formula'))
      .describe('figures that follow from others')
      .optional(),
    must: z
      .array(z.record(z.string(), z.string()))
      .describe('what has to hold, and what to do when it does not: foot <= leg: make the leg thicker')
      .optional(),
    boards: z.record(z.string(), BOARD).describe('boards, in the order you would build'),
    joints: z
      .record(z.string(), JOINT.nullable())
      .describe('A to B: every pair that touches is joined by loose tenons')
      .optional(),
    held: z.record(z.string(), HELD).describe('A to B: held without glue, free to move').optional(),
    'used by': USED_BY.describe('who uses it').optional(),
  })
  .describe('A piece told in one file');

/** Keys the schema knows, for the proof that they are those the reader knows. */
export const SCHEMA_KEYS = {
  board: Object.keys(BOARD.shape),
  joint: Object.keys(JOINT.shape),
  held: Object.keys(HELD.shape),
  user: Object.keys(USED_BY.shape),
} as const;

/** The schema as the file editors read: JSON Schema, draft 7. */
export function pieceSchemaJson(): string {
  const json = z.toJSONSchema(PIECE_SCHEMA, {
    target: 'draft-7',
    override({ zodSchema, jsonSchema }) {
      // a joint may say how deep its mortises are in each board
      if (zodSchema === (JOINT as unknown))
        jsonSchema.patternProperties = { '^depth in ': { type: ['string', 'number'] } };
    },
  });
  return `${JSON.stringify(json, null, 2)}\n`;
}
