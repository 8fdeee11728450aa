export { arcsTemplate } from './template-dxf-arcs.js';
