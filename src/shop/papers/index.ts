export { type PapersRequest, type ShopPapers, shopPapers } from './shop-papers.js';
