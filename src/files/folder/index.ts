export { requireOutFolder, writeFolder } from './output-folder.js';
export { LIST, type OutputFile, sha256 } from './owned-files.js';
