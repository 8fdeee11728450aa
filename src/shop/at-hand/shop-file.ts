import * as z from 'zod';
import { FRACTIONS } from '../../length/index.js';
import { choice, count, length } from '../../model/index.js';
import { GLUES, STRAIGHT_GRAIN } from '../../strength/index.js';
import { climateNames, materialNames } from '../../tables/index.js';

/** What leaving a value out means wherever nothing can be worked out without it. */
const NOT_VERIFIED = 'not verified';

/** A length that may be left out, mm. */
const maybe = (min: number, max: number, help: string) => length({ min, max, derived: NOT_VERIFIED, help });

/** A length a row is nothing without, mm. */
const needed = (min: number, max: number, help: string) =>
  z.number().min(min).max(max).meta({ kind: 'length', min, max, help });

/** A whole number a row is nothing without. */
const whole = (min: number, max: number, help: string) =>
  z.number().int().min(min).max(max).meta({ kind: 'count', min, max, help });

/** A whole number that may be left out. */
const maybeWhole = (min: number, max: number, derived: string, help: string) =>
  count({ min, max, derived, help });

/** A word a row is nothing without. */
const word = (help: string) => z.string().meta({ kind: 'text', help });

/** Several lengths in one line, mm. */
const lengths = (min: number, max: number, help: string) =>
  z
    .array(needed(min, max, help))
    .optional()
    .meta({ kind: 'lengths', min, max, help });

const group = <Shape extends z.ZodRawShape>(help: string, shape: Shape) => z.object(shape).meta({ help });

const rows = <Shape extends z.ZodRawShape>(help: string, shape: Shape) =>
  z.array(z.object(shape)).meta({ help });

/** A group that may be left out as a whole. */
const maybeGroup = <Shape extends z.ZodRawShape>(help: string, shape: Shape) =>
  group(help, shape).optional().meta({ help });

/**
 * Everything a shop file may say. The help, the ranges and the types of the file, its documented example and its error texts
 * all come from here.
 */
export const shopFile = z.object({
  units: choice(['mm', 'in'], {
    derived: 'the units of the run',
    help: 'What bare numbers for lengths are in; a length may also carry its own unit: 8 mm, 5/16 in.',
  }),
  fraction: choice(FRACTIONS, {
    derived: FRACTIONS[0],
    help: 'The finest fraction of an inch you work wood to, for papers in inches; what is set on the router is told in thousandths.',
  }),
  router: group('The plunge router.', {
    base: group('Its base, which runs against stops and guides.', {
      shape: choice(['round', 'rectangle', 'round with flats'], {
        default: 'round',
        help: 'Outline of the base.',
      }),
      along: needed(80, 400, 'Size of the base along the cut; the diameter of a round one.'),
      across: length({
        min: 80,
        max: 400,
        derived: 'the same as along',
        help: 'Size of the base across the cut.',
      }),
      flats: maybeGroup(
        "Flats of a round base, each by its distance from the cutter's axis. Turn the base so that an odd flat is towards or away from you.",
        {
          near: maybe(20, 200, 'To the flat towards you.'),
          far: maybe(20, 200, 'To the flat away from you: it runs along a guide board.'),
          sides: maybe(20, 200, 'To a flat on the left and one as far on the right: they meet the stops.'),
        },
      ),
    }),
    eccentricity: maybe(
      0,
      5,
      "How far the cutter's axis stands off the middle of the base, measured: half the difference of two slots cut along one guide with the router turned half round in between.",
    ),
    plungeTravel: maybe(10, 120, 'How far the cutter goes down from its highest position.'),
    turretSteps: lengths(
      0,
      100,
      "Heights of the depth turret's steps above its lowest, ascending, the lowest first: [0, 6, 12].",
    ),
    collets: lengths(3, 20, 'Shank diameters its collets take.'),
    baseThickness: maybe(2, 30, 'Thickness of the base plate itself.'),
    guideReach: maybe(20, 500, "Farthest distance from the cutter's axis to its edge guide."),
  }),
  cutters: rows('Straight cutters at hand.', {
    nominal: needed(2, 30, 'Diameter written on it.'),
    diameter: maybe(2, 30, 'Diameter measured with a caliper.'),
    cuttingLength: maybe(3, 120, 'Length of its cutting edges.'),
    overallLength: maybe(20, 250, 'Length from tip to shank end.'),
    shank: maybe(3, 20, 'Diameter of its shank.'),
    slotInFace: maybe(2, 32, 'Width of a test slot it cut in face grain, measured.'),
    slotInEnd: maybe(2, 32, 'Width of a test slot it cut in end grain, measured.'),
  }),
  bushes: rows('Guide bushes at hand.', {
    outside: needed(5, 100, 'Outer diameter.'),
    bore: needed(3, 98, 'Bore the cutter passes.'),
    collarLength: needed(1, 30, 'How far the collar stands out of the base.'),
  }),
  jig: z.record(z.string(), z.unknown()).meta({
    help: 'The two-rail jig at hand, by the parameters of the jig model; its router base is the one above, the rest are its defaults. Or `made`: the summary.json of the jig that was made, from the folder of this file.',
  }),
  sawKerf: maybe(0.5, 10, 'Width of the saw cut.'),
  sheets: rows('Sheet goods at hand, thickness measured.', {
    name: word('What it is, as in the table of sheet goods.'),
    length: needed(50, 4000, 'Along the grain of its face.'),
    width: needed(50, 3000, 'Across it.'),
    thickness: needed(2, 60, 'Thickness, measured.'),
  }),
  lumber: rows('Boards at hand.', {
    thickness: needed(5, 200, 'Thickness.'),
    width: needed(20, 1000, 'Width.'),
    length: needed(50, 8000, 'Length.'),
    count: whole(1, 500, 'How many.'),
  }),
  roughAllowance: maybeGroup('What is added to each finished size to get the rough one.', {
    length: needed(0, 200, 'Added to the length.'),
    width: needed(0, 50, 'Added to the width.'),
    thickness: needed(0, 30, 'Added to the thickness.'),
  }),
  shortest: group('Shortest piece that is safe on a machine.', {
    planer: maybe(50, 1000, 'Through the thickness planer.'),
    saw: maybe(20, 1000, 'Along the fence of the saw.'),
  }),
  clamps: rows('Clamps at hand.', {
    opening: needed(20, 4000, 'Widest opening.'),
    throat: needed(10, 400, 'From the bar to the middle of the jaws.'),
    count: whole(1, 200, 'How many.'),
  }),
  paper: choice(['A4', 'Letter'], {
    derived: 'A4 with mm, Letter with inches',
    help: 'Paper that plans are printed on.',
  }),
  glue: maybeGroup('The glue used.', {
    openMinutes: whole(1, 240, 'Open time in minutes: from spreading to closing.'),
    clampMinutes: whole(1, 2880, 'Minutes in the clamps.'),
    leastCelsius: whole(-10, 40, 'Coldest shop it sets in, °C.'),
    kind: choice(GLUES, {
      derived: GLUES[0],
      help: 'White or yellow wood glue of a class D1 to D4 on its label, or another: what another holds is told only with its shear.',
    }),
    shear: maybeWhole(
      1,
      40,
      'by its class',
      'Its least shear in test pieces of your own, MPa, rounded down.',
    ),
  }),
  place: maybeGroup(
    'Where the pieces will stand: wood moves with the air. Name a climate, or give the air when it is driest and when it is dampest, all four figures.',
    {
      climate: choice(climateNames, { derived: climateNames[0], help: 'A climate from the table.' }),
      dryCelsius: maybeWhole(-20, 45, 'by the climate', 'Temperature when the air is driest, °C.'),
      dryHumidity: maybeWhole(5, 95, 'by the climate', 'Relative humidity then, %.'),
      dampCelsius: maybeWhole(-20, 45, 'by the climate', 'Temperature when the air is dampest, °C.'),
      dampHumidity: maybeWhole(5, 95, 'by the climate', 'Relative humidity then, %.'),
    },
  ),
  wood: maybeGroup('The wood the pieces are made of.', {
    sawn: choice(['flat', 'quarter'], {
      derived: 'flat, which moves most',
      help: 'How it was sawn: growth rings along the width of a board, or through its thickness.',
    }),
    gluedAt: maybeWhole(
      4,
      20,
      'the middle of the climate',
      'Its moisture content when it is glued, %, measured.',
    ),
    moisture: maybeWhole(
      4,
      30,
      'the dampest of the climate, 12 at least',
      'The most moisture it comes to in use, %: damp wood bears less.',
    ),
    grainOneIn: maybeWhole(
      4,
      60,
      `${STRAIGHT_GRAIN}, straight stock`,
      'How far its grain runs out on the face of a board at worst: 1 in so many.',
    ),
    grainOneInOnEdge: maybeWhole(
      4,
      60,
      'straight',
      'The same on the edge of that board: both slopes count together.',
    ),
    tenons: choice(materialNames, {
      derived: 'the wood of the boards they join',
      help: 'What tenons are cut from.',
    }),
  }),
  jointStiffness: maybeWhole(
    100,
    10_000_000,
    'sway is told as a band',
    'How stiff a joint is as you make it, measured: N·m for a turn of one radian.',
  ),
});
