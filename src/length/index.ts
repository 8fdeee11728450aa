export { type Chain, closedChain } from './chain.js';
export { fixed, trimmed } from './fixed.js';
export { parseMass, printMass } from './mass.js';
export { parseAngle } from './parse-angle.js';
export { type LengthOptions, parseLength, type Sign } from './parse-length.js';
export { printAngle } from './print-angle.js';
export { printFine, printLength } from './print-length.js';
export { type Say, speaker } from './speaker.js';
export { INCH, toMm, type Units } from './units.js';
