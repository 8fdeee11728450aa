export { boltLengthFrom, boltLengths, boltLengthUpTo } from './bolt-length.js';
export { type Climate, climate, climateNames } from './climate.js';
export { type Cutter, cutterDiameters, cutters, nearestCutter } from './cutters.js';
export { density, massOf, materialNames } from './density.js';
export {
  type Fastener,
  fastener,
  fastenerSizes,
  type HexHead,
  type ThreadSystem,
  type Washer,
} from './fastener.js';
export { routerSpeedLimit } from './router-speed.js';
export { type Sheet, sheet, sheetNames } from './sheet.js';
export { type Species, species, speciesNames } from './species.js';
