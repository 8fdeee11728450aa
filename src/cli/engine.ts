import process from 'node:process';
import { setFlagsFromString } from 'node:v8';

/**
 * Tells the engine how to spend its time. A run is over in a second or two, and by default half of its processor time goes into
 * translating anew, with care, code that is hardly used again: translating waits until a function has run for about as long as
 * that takes. And what is given up young is cleared by one thread: there is so little of it at a time that others cost more to
 * wait for than they clear. So a worker that judges keeps to a core of its own too. Other versions of Node set other stores by
 * these figures, and are left alone.
 */
export function settleEngine(): void {
  if (!process.versions.node.startsWith('20.')) return;
  for (const flag of [
    '--interrupt-budget=1000000',
    '--wasm-tiering-budget=400000000',
    '--no-parallel-scavenge',
  ])
    setFlagsFromString(flag);
}
