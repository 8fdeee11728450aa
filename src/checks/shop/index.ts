export { assemblyPath, stuck } from './assembly-path.js';
export { clampsAtHand } from './clamps.js';
export { cuttersAtHand } from './cutters-at-hand.js';
export { dryRun } from './dry-run.js';
export { heldMortises } from './holding.js';
export { templatesLeft } from './templates-left.js';
