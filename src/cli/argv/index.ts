export { parseArgv } from './parse-argv.js';
export { PROGRAM } from './program.js';
