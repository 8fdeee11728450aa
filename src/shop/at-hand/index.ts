export { builtInShop } from './built-in-shop.js';
export { cutterAtHand } from './cutter-at-hand.js';
export { designFor } from './design-for.js';
export { type JigAtHand, jigAtHand, type RailAtHand } from './jig-at-hand.js';
export { jigOfShop, jigParameters, withMadeJig } from './jig-of-shop.js';
export { readShop, shopUnits } from './read-shop.js';
export { fnv1a, revisionOf } from './revision.js';
export { seasonOf, toldBy } from './season-of.js';
export { sheetsFor } from './sheets-for.js';
export type {
  BushAtHand,
  ClampAtHand,
  CutterAtHand,
  GlueAtHand,
  LumberAtHand,
  RouterAtHand,
  SheetAtHand,
  Shop,
  Verdict,
} from './shop.js';
export { shopExample } from './shop-example.js';
export { type ShopField, shopForm } from './shop-form.js';
export { toolsOf } from './tools-of.js';
export { baseOf, guidedEdge, plateOf, standingBase, stopDistance, type Travelling } from './travelling.js';
export { withJig } from './with-jig.js';
