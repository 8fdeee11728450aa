export { type BearingPaper, bearingPaper } from './bearing-paper.js';
export { type GlueUpPaper, glueUpPaper } from './glue-up-paper.js';
export { type OrderPaper, orderPaper } from './order-paper.js';
export { type SetupPaper, type SetupParts, setupPaper, setupParts } from './setup-paper.js';
export { type PapersRequest, type ShopPapers, shopPapers } from './shop-papers.js';
