import process from 'node:process';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/**
 * Files and folders that run long, the longest first by the processor's time: begun late, one of them would keep a single core
 * busy at the end.
 */
const LONG = [
  'outside/pdf.',
  'outside/living.',
  'outside/preview.',
  'outside/dxf.',
  'strength/faults.',
  'properties/designs.',
  'process/same-bytes.',
  'outside/living-site.',
  'checks/quick-verdict.',
  'outside/preview-axe.',
  'verdict/cures.',
  'living/serve.',
  'strength/at-once.',
  'drawing/board-drawing.',
  'drawing/hidden-lines.',
  'drawing/tones.',
  'models/jig.',
  'strength/never-claimed.',
  'designs',
  'files',
  'process',
  'node',
  'outside',
  'properties',
  'notation/pieces.',
  'notation/random-pieces.',
  'checks',
  'ranges',
  'range',
  'verdict',
];

class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ moduleId }: TestSpecification) => {
      const found = LONG.findIndex((long) => moduleId.includes(`/tests/${long}`));
      return found < 0 ? LONG.length : found;
    };
    return (await super.sort(files)).sort((a, b) => place(a) - place(b));
  }
}

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/build.ts'],
    setupFiles: ['tests/properties/one-seed.ts'],
    testTimeout: 300_000,
    hookTimeout: 300_000,
    allowOnly: false,
    // no test changes what another sees, so a worker keeps the modules it has read: half the time of the processor
    isolate: false,
    // a worker for every core; the stock choice leaves one core idle, which is half of a small machine
    maxWorkers: '100%',
    // as the program itself does (src/cli/engine.ts): most of what a test runs is over before translating it anew pays
    execArgv: process.versions.node.startsWith('20.') ? ['--interrupt-budget=600000'] : [],
    sequence: { sequencer: LongFirst },
  },
});
