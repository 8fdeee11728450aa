import { angle, choice, count, length, lengthList } from '../../src/model/index.js';
import { fastenerSizes, materialNames, sheetNames } from '../../src/tables/index.js';
import { HEAD_BELOW, HEAD_SIDE_AIR, RAIL_BEYOND, SLOT_PLAY } from './practice.js';
import { BASE_FLAT, USUAL } from './usual.js';

/** What the person owns and wants to grip; mm and degrees. */
export const parameters = {
  routerBase: choice(['round', 'rectangle', 'round-with-flats'], {
    default: 'round',
    help: "Outline of the router's base.",
  }),
  baseDiameter: length({
    min: 80,
    max: 300,
    derived: (say) => `${say.fine(USUAL[say.units].baseDiameter)}; more round a wide circle of holes`,
    help: 'Diameter of a round base.',
  }),
  baseLength: length({
    min: 80,
    max: 400,
    default: 150,
    inches: 6,
    help: 'Length of a rectangular base, along the rails.',
  }),
  baseWidth: length({
    min: 80,
    max: 400,
    default: 150,
    inches: 6,
    help: 'Width of a rectangular base, across the rails.',
  }),
  baseFlat: length({
    min: 30,
    max: 150,
    derived: (say) => `${say.fine(BASE_FLAT[say.units])} when no other flat is given, else round there`,
    help: "Distance from the cutter's centre to the flat towards the person, of a round base with flats.",
  }),
  baseFlatFar: length({
    min: 30,
    max: 150,
    derived: 'round there',
    help: "Distance from the cutter's centre to the flat away from the person, of a round base with flats.",
  }),
  baseFlatSides: length({
    min: 30,
    max: 150,
    derived: 'round there',
    help: "Distance from the cutter's centre to two flats, left and right, of a round base with flats.",
  }),
  baseThickness: length({
    min: 4,
    max: 30,
    default: 10,
    inches: 0.375,
    help: 'Thickness of the base where its mounting holes are threaded.',
  }),
  bitOpening: length({
    min: 10,
    max: 100,
    derived: (say) => `${say.fine(USUAL[say.units].bitOpening)}; less inside a narrow circle of holes`,
    help: 'Diameter of the opening the cutter passes.',
  }),
  cutter: length({
    min: 4,
    max: 20,
    derived: (say) =>
      `the thickest at hand up to ${say.fine(USUAL[say.units].cutter)}; less for thin work or a narrow opening`,
    help: 'Diameter of the cutter.',
  }),
  plunge: length({
    min: 5,
    max: 100,
    default: 35,
    inches: 1.375,
    help: 'How far the cutter reaches below the plate when it is down.',
  }),

  workMin: length({
    min: 6,
    max: 150,
    derived: (say) => `${say.fine(USUAL[say.units].workMin)}; more for a thick cutter`,
    help: 'Thickness of the thinnest work to grip.',
  }),
  workMax: length({
    min: 8,
    max: 200,
    derived: (say) => `${say.fine(USUAL[say.units].workMax)}; as far as slots that are given open`,
    help: 'Thickness of the thickest work to grip; half of it is how far a mortise may lie from the end of a board that a rail fences.',
  }),

  plateMaterial: choice(sheetNames, { default: 'birch plywood', help: 'Sheet the base plate is cut from.' }),
  plateThickness: length({ min: 6, max: 30, default: 12, inches: 0.5, help: 'Thickness of the base plate.' }),
  railMaterial: choice(materialNames, {
    default: 'white ash',
    help: 'Wood of the two rails.',
  }),
  railWidth: length({
    min: 25,
    max: 100,
    derived: (say) => `${say.fine(USUAL[say.units].railWidth)}; more for wide knobs or counterbores`,
    help: 'Width of each rail, across the work.',
  }),
  railHeight: length({
    min: 25,
    max: 120,
    derived: (say) => `${say.fine(USUAL[say.units].railHeight)}; more for deep counterbores or long bolts`,
    help: 'How far each rail reaches down beside the work.',
  }),

  boltSize: choice(fastenerSizes, {
    default: 'M8',
    inches: '5/16',
    help: 'Thread of the bolts that hold the rails.',
  }),
  knobDiameter: length({ min: 15, max: 90, default: 40, inches: 1.5, help: 'Diameter of the knobs.' }),
  knobHeight: length({
    min: 10,
    max: 70,
    derived: (say) => `${say.fine(USUAL[say.units].knobHeight)}; more over a deep thread`,
    help: 'Height of the knobs.',
  }),
  knobThread: length({
    min: 5,
    max: 60,
    derived: (say) => `${say.fine(USUAL[say.units].knobThread)}; less in a low knob`,
    help: 'Depth of the threaded hole in a knob, from below.',
  }),
  knobClearance: length({
    min: 3,
    max: 60,
    default: 10,
    inches: 0.375,
    help: "Clearance between a knob and the router's base, for fingers.",
  }),

  mounting: choice(['circle', 'points', 'distances'], {
    default: 'circle',
    help: "How the holes in the router's base are given.",
  }),
  holeCircle: length({
    min: 20,
    max: 280,
    derived: (say) => `${say.fine(USUAL[say.units].holeCircle)}; to suit the base and the opening`,
    help: 'Circle through the mounting holes.',
  }),
  holeCount: count({ min: 2, max: 8, default: 4, help: 'Mounting holes on the circle.' }),
  holeStart: angle({
    min: -180,
    max: 180,
    default: 45,
    help: 'Direction of the first mounting hole from the rails, for circle and distances.',
  }),
  holePoints: lengthList({
    default: '40, 40; -40, 40; -40, -40; 40, -40',
    help: "Mounting holes from the cutter's centre, x along the rails and y away from the person; it may begin with mm: or in: for its bare numbers.",
  }),
  holeDistances: lengthList({
    default:
      '1-2 80; 2-3 80; 3-4 80; 1-4 80; 1-3 113.14; 2-4 113.14; c-1 56.57; c-2 56.57; c-3 56.57; c-4 56.57',
    help: "Distances between the centres of mounting holes; c is the cutter's centre; it may begin with mm: or in: for its bare numbers.",
  }),
  mirror: choice(['as-seen-from-above', 'mirrored'], {
    default: 'as-seen-from-above',
    help: 'Hand of measured holes: the first three run counter-clockwise seen from above, or clockwise (mirrored).',
  }),
  screwSize: choice(fastenerSizes, {
    default: 'M5',
    help: "Thread of the mounting screws: the one in the router's own base; try one of its screws.",
  }),
  headBelow: length({
    min: 0,
    max: 3,
    default: 0.5,
    inches: 0.02,
    help: 'How far the screw heads lie below the sliding face.',
  }),
  screwLength: length({
    min: 8,
    max: 60,
    derived: 'longest standard length that stays within the base',
    help: 'Length of the mounting screws, over the head.',
  }),

  slots: choice(['closed', 'open'], {
    default: 'closed',
    help: 'Open slots run out at the far edge, so that a rail comes off without taking its knobs off.',
  }),
  bridge: length({
    min: 8,
    max: 100,
    default: 25,
    inches: 1,
    help: 'Wood beyond the slots, to the edges of the plate.',
  }),
  slotLength: length({
    min: 10,
    max: 600,
    derived: (say) => `thickest work, a rail, the bolt clearance and ${say.fine(2 * SLOT_PLAY)}`,
    help: 'Length of each slot over its round ends.',
  }),
  slotPosition: length({
    // half the smallest base, the least clearance for fingers and half the smallest knob
    min: 50,
    max: 400,
    derived: 'half the router base, the clearance for fingers and half a knob',
    help: "Distance of each slot from the cutter's centre, along the rails.",
  }),
  plateLength: length({
    min: 100,
    max: 1000,
    derived: 'both slots and a bridge beyond each',
    help: 'Length of the plate, along the rails.',
  }),
  plateWidth: length({
    min: 60,
    max: 800,
    derived: 'a slot and a bridge at each end, or the router base',
    help: 'Width of the plate, across the rails.',
  }),
  railLength: length({
    min: 100,
    max: 1200,
    derived: (say) => `the plate and ${say.fine(RAIL_BEYOND[say.units])} beyond it at each end`,
    help: 'Length of the rails.',
  }),
  boltLength: length({
    min: 30,
    max: 140,
    derived: 'next standard length that fills one diameter of the knob',
    help: 'Length of the bolts, under the head.',
  }),
  counterboreDiameter: length({
    min: 8,
    max: 60,
    derived: (say) => `corners of the bolt's head and ${say.fine(2 * HEAD_SIDE_AIR)}`,
    help: "Diameter of the counterbores for the bolts' heads.",
  }),
  counterboreDepth: length({
    min: 2,
    max: 100,
    derived: (say) =>
      `height of the bolt's head and ${say.fine(HEAD_BELOW)}, or deeper to suit a standard bolt`,
    help: "Depth of the counterbores, from the rail's underside.",
  }),
};
