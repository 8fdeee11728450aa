import { defineModel, text } from '../../../src/model/index.js';
import { smallModel } from '../../model/small-model.js';

export default defineModel({
  ...smallModel,
  name: 'clash',
  parameters: { out: text({ default: 'left', help: 'a name the command line needs for itself' }) },
  complete: (values) => values,
  build: () => smallModel.build({} as never),
});
