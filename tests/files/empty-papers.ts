import type { Design } from '../../src/assembly/index.js';
import { builtInShop, glueMass, glueUp, type ShopPapers } from '../../src/shop/index.js';

/** Papers with nothing on them, for tests of what stands beside them. */
export const emptyPapers = (design: Design): ShopPapers => ({
  shop: builtInShop('mm'),
  revision: '00000000',
  holdings: [],
  aids: [],
  cards: [],
  grooves: [],
  uncut: [],
  order: { steps: [], fitAfter: new Map(), notOrdered: [] },
  templates: [],
  sticks: [],
  tenons: [],
  strips: [],
  testBlanks: [],
  cutList: [],
  bills: [],
  hardware: [],
  layouts: [],
  toBuy: [],
  glueUp: glueUp({ ...design, joints: [] }),
  clamps: { clamps: [], pads: [], offsets: [], unclamped: [] },
  diagonals: [],
  glue: glueMass({ ...design, joints: [] }),
  strength: undefined,
  moving: { margins: [], notComputed: [] },
});
