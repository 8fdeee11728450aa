import { USUAL_USER } from '../../src/assembly/index.js';
import { PRACTICE } from '../../src/joinery/index.js';
import { angle, choice, count, flag, length, mass } from '../../src/model/index.js';
import { speciesNames } from '../../src/tables/index.js';
import { USUAL } from './usual.js';

/** Every size of the stool; mm and degrees. */
export const parameters = {
  treads: choice([1, 2], { default: 1, help: 'How many treads: a plain step, or two steps.' }),
  height: length({
    min: 120,
    max: 700,
    derived: (say) =>
      `${say.fine(USUAL[say.units].height[1])} for one tread, ${say.fine(USUAL[say.units].height[2])} for two; more when stretcher or arch ask for it`,
    help: 'Floor to the top of the highest tread.',
  }),
  lowerHeight: length({
    min: 80,
    max: 400,
    derived: 'half the height',
    help: 'Floor to the top of the lower tread, when there are two.',
  }),
  treadLength: length({
    min: 250,
    max: 900,
    default: 420,
    inches: 16,
    help: 'Length of the top tread, left to right.',
  }),
  treadDepth: length({
    min: 140,
    max: 450,
    derived: (say) => `${say.fine(USUAL[say.units].treadDepth)}; more when feet and arch ask for it`,
    help: 'Front to back of each tread.',
  }),
  treadThickness: length({
    min: 18,
    max: 50,
    derived: (say) => `${say.fine(USUAL[say.units].treadThickness)}; more when the cutter asks for it`,
    help: 'Thickness of the treads.',
  }),
  overhang: length({
    min: 0,
    max: 120,
    derived: (say) =>
      `${say.fine(USUAL[say.units].overhang)}; less where the feet would stand inside the ends of a tread`,
    help: 'How far the top tread reaches beyond the outer face of each side.',
  }),
  setback: length({
    min: 0,
    max: 40,
    derived: (say) =>
      `${say.fine(USUAL[say.units].setback)}; less where the feet would stand inside the edges of a tread`,
    help: 'How far the sides are set back from the front and back of a tread.',
  }),
  sideThickness: length({
    min: 18,
    max: 50,
    derived: (say) => `${say.fine(USUAL[say.units].sideThickness)}; more when the cutter asks for it`,
    help: 'Thickness of the side boards.',
  }),
  rake: angle({
    min: 0,
    max: 20,
    derived: `${USUAL.mm.rake}°; more under a long overhang`,
    help: 'How far the sides lean outwards, from upright.',
  }),
  taper: angle({
    min: 0,
    max: 10,
    derived: `${USUAL.mm.taper}°; more on a low stool, or when the sides are set back far`,
    help: 'How far each long edge of a side spreads towards the foot, in the plane of the side.',
  }),
  archHeight: length({
    min: 0,
    max: 200,
    derived: (say) =>
      `${say.fine(USUAL[say.units].archHeight)}; the arch radius when that is more, less under a low tread`,
    help: 'Height of the arch between the feet, measured up the side; 0 leaves the foot straight.',
  }),
  archRadius: length({
    min: 0,
    max: 150,
    derived: (say) => `${say.fine(USUAL[say.units].archRadius)}; less when the arch is low or narrow`,
    help: 'Radius of the two upper corners of the arch.',
  }),
  footLength: length({
    min: 20,
    max: 200,
    derived: (say) => `${say.fine(USUAL[say.units].footLength)}; less when the arch asks for it`,
    help: 'Front to back of each foot beside the arch.',
  }),
  stretcherWidth: length({
    min: 40,
    max: 200,
    derived: (say) =>
      `${say.fine(USUAL[say.units].stretcherWidth)}; more for three tenons or a high stool, less under a low tread`,
    help: 'Width of the stretcher, standing on edge.',
  }),
  stretcherThickness: length({
    min: 15,
    max: 50,
    derived: (say) => `${say.fine(USUAL[say.units].stretcherThickness)}; more when the cutter asks for it`,
    help: 'Thickness of the stretcher.',
  }),
  stretcherHeight: length({
    min: 20,
    max: 500,
    derived: (say) => `${say.fine(USUAL[say.units].stretcherHeight)}; clear of the arch and of the tread`,
    help: 'Floor to the lower edge of the stretcher.',
  }),
  steppedSide: choice(['two-boards', 'one-board'], {
    default: 'two-boards',
    help: 'How a side with a step is made: of two boards glued edge to edge once their mortises are cut, or sawn from one, whose inner mortises are then chopped by hand.',
  }),
  notchRadius: length({
    min: 3,
    max: 30,
    default: 12,
    inches: 0.5,
    help: 'Radius in the corner of a step sawn from one board, which the lower tread keeps clear of.',
  }),
  handOpening: flag({ default: true, help: 'Whether the top tread has an opening to carry it by.' }),
  handLength: length({ min: 80, max: 140, default: 100, inches: 4, help: 'Length of the hand opening.' }),
  handWidth: length({ min: 25, max: 45, default: 30, inches: 1.25, help: 'Width of the hand opening.' }),
  treadTenons: count({ min: 1, max: 4, default: 2, help: 'Loose tenons between a tread and each side.' }),
  stretcherAxis: choice(['square-to-side', 'along-stretcher'], {
    default: 'square-to-side',
    help: 'Which way the mortises of the stretcher run: square to the raked sides, or along its own grain.',
  }),
  stretcherTenons: count({ min: 1, max: 3, default: 1, help: 'Loose tenons in each end of the stretcher.' }),
  cutter: length({
    min: 4,
    max: 20,
    derived: 'the cutter at hand nearest a third of the thinnest board',
    help: 'Diameter of the cutter; it sets the width of every mortise.',
  }),
  cheekClearance: length({
    min: 0,
    max: 0.5,
    default: 0.1,
    inches: 0.004,
    help: 'Clearance between each cheek of a tenon and its mortise.',
  }),
  edgeClearance: length({
    min: 0,
    max: 5,
    derived: (say) => `${say.fine(PRACTICE.edgeClearance)}; more where a wide tenon swells`,
    help: 'How much narrower a tenon is than its mortise is long, both edges together.',
  }),
  endGap: length({
    min: 0,
    max: 5,
    default: 1,
    inches: 0.03125,
    help: 'Gap between each end of a tenon and the bottom of its mortise.',
  }),
  person: mass({
    min: 30,
    max: 250,
    default: USUAL_USER.kg,
    label: 'heaviest person',
    help: 'The heaviest person who stands on it; the loads it is asked to bear follow.',
  }),
  child: flag({
    default: USUAL_USER.child,
    help: 'Whether a child uses it too: openings are looked at for small fingers and heads.',
  }),
  wood: choice(speciesNames, {
    default: 'white ash',
    help: 'Species of all the boards; it sets their mass.',
  }),
};
