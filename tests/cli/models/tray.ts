import { defineModel, length } from '../../../src/model/index.js';
import { smallModel } from '../../model/small-model.js';

export default defineModel({
  name: 'tray',
  title: 'Tray',
  summary: 'A second model, so that there is a list.',
  parameters: { width: length({ min: 100, max: 500, default: 300, help: 'width over all' }) },
  build: () => ({ ...smallModel.build({} as never), name: 'tray' }),
});
