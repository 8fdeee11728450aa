export { LIST, type OutputFile, sha256 } from './output-file.js';
export { requireDistinct, requireSafePath } from './safe-path.js';
