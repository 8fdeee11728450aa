export { type Chain, closedChain } from './chain.js';
export { fixed, trimmed } from './fixed.js';
export { parseMass, printMass } from './mass.js';
export { parseAngle } from './parse-angle.js';
export { type LengthOptions, parseLength, type Sign } from './parse-length.js';
export { printAngle } from './print-angle.js';
export { printFine, printFit, printLength, printTool, soldInInches } from './print-length.js';
export {
  type DrawingUnits,
  FRACTIONS,
  type Fraction,
  forRouter,
  type Rule,
  rulesOf,
  stepOf,
  stepsInMm,
  systemOf,
  unitsOf,
  withFraction,
} from './rule.js';
export { type Say, speaker } from './speaker.js';
export { INCH, toMm, type Units } from './units.js';
