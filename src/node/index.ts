// What touches the disk, the process and the loading of code: everything before this folder also runs in a page.

export { loadModel, modelNames, OWN_MODELS } from './find-models.js';
export { checkDesign, makeDesign } from './late.js';
export type { MakeRequest } from './make-design.js';
export { readYaml } from './read-yaml.js';
export { SUPPLIES } from './supplies.js';
export { version } from './version.js';
