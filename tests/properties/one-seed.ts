import fc from 'fast-check';
import { SEED } from './seed.js';

/** Every property test that names no seed of its own starts from this one: what passed once passes again. */
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: SEED });
