import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import { readParameters } from '../../src/model/index.js';

/** The stool, its parameters as they are typed. */
export const stoolWith = (raw: Readonly<Record<string, unknown>> = {}) =>
  stool.build(readParameters(stool, raw, 'mm'));

/** The jig as it comes. */
export const plainJig = () => jig.build(readParameters(jig, {}, 'mm'));
