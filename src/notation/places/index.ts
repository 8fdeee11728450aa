export { boardsCalled, NoBoard, namesOfPair } from './board-names.js';
export { arrises, faceMet, runTo } from './cut-to.js';
export { readEvenly } from './evenly.js';
export { type Pair, pairOf } from './pair.js';
export { middleAt, named, type Spot, type Surroundings, sideAt } from './place.js';
export { placePhrase } from './place-phrase.js';
export {
  ALL_AXES,
  AXIS_WORDS,
  type Axis,
  GRAINS,
  isSide,
  LOOKS,
  MIRRORS,
  SIDES,
  type Side,
  sideOn,
  vectorOf,
  type Way,
} from './sides.js';
export { type AxisTold, type Fact, type Reach, type Settled, solveBox } from './solve-box.js';
export { type Axes, type Box, boxOf, type Stood, type Trim } from './stood.js';
export { USE_WORDS, USER_KEYS, useOf, userOf } from './use.js';
