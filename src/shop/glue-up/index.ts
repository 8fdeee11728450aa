export { type Corner, type Diagonal, type Diagonals, diagonalsOf } from './diagonals.js';
export { cheekArea, type GlueMass, glueMass } from './glue-mass.js';
export { type GlueStep, type GlueUp, glueUp, type TenonSeating } from './glue-up.js';
export { type Entry, entriesOf, type Freedom, freedomOf, type JointFreedom } from './glue-up-entry.js';
export { type Blocked, bestMove, type Move, type OrderStep } from './glue-up-move.js';
export { type Conflict, type Order, orderOf } from './glue-up-order.js';
export { type PathBlock, pathBlocks } from './glue-up-path.js';
export { type ProvedGlueUp, provedGlueUp } from './glue-up-proved.js';
export type { GlueStage } from './glue-up-stages.js';
