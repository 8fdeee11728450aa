export { smallModel as default } from '../../model/small-model.js';
