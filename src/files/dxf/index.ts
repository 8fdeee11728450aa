export { withLayers } from './dxf-layers.js';
export { inFile, oneRow, rounded } from './dxf-number.js';
export { entitiesOf, type Pair, pairsOf, sectionOf, textOf, withHeader } from './dxf-pairs.js';
export { COLOURS, type DxfScale } from './dxf-scale.js';
