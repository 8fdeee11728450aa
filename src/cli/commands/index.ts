export { check } from './check.js';
export { describe } from './describe.js';
export { explain } from './explain.js';
export { list } from './list.js';
export { make } from './make.js';
export { newCommand } from './new.js';
export { open } from './open.js';
export { shopCommand } from './shop-command.js';
