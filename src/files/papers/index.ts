export { glueUpMd } from './glue-up-md.js';
export { cutLine } from './layout-words.js';
export { type MarksPaper, marksSvg } from './marks-svg.js';
export { type OrderPaper, orderMd } from './order-md.js';
export { type SetupPaper, setupMd } from './setup-md.js';
