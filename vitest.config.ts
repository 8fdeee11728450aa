import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Folders whose files run long, the longest first: begun late, one of them would keep a single core busy at the end. */
const LONG = ['process', 'node', 'outside', 'properties', 'verdict', 'ranges', 'checks'];

class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ moduleId }: TestSpecification) => {
      const found = LONG.findIndex((folder) => moduleId.includes(`/tests/${folder}/`));
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
    testTimeout: 120_000,
    hookTimeout: 120_000,
    allowOnly: false,
    // no test changes what another sees, so a worker keeps the modules it has read: half the time of the processor
    isolate: false,
    // a worker for every core; the stock choice leaves one core idle, which is half of a small machine
    maxWorkers: '100%',
    sequence: { sequencer: LongFirst },
  },
});
