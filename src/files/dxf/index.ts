export { inFile, oneRow, rounded } from './dxf-number.js';
export { entitiesOf, type Pair, pairsOf, sectionOf, textOf, withHeader } from './dxf-pairs.js';
export { COLOURS, type DxfScale, LINE_TYPES, type LineType } from './dxf-scale.js';
export { withLayers, withLineTypes } from './dxf-tables.js';
