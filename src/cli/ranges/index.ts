export { range } from './range.js';
