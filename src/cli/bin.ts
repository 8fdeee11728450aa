#!/usr/bin/env node
import process from 'node:process';
import { settleEngine } from './engine.js';

/** The oldest Node the program runs on, as `engines` in package.json says. */
const LEAST = [20, 19] as const;

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < LEAST[0] || (major === LEAST[0] && minor < LEAST[1])) {
  process.stderr.write(
    `tenonwright: this is Node ${process.versions.node}; it needs ${LEAST.join('.')} or later: install a newer one from nodejs.org or by your system's packages\n`,
  );
  process.exit(2);
}

settleEngine();

process.stdout.on('error', ({ code }: NodeJS.ErrnoException) => {
  // a reader that has seen enough, like `head`, closes the pipe: that is no fault
  if (code === 'EPIPE') process.exit(0);
  process.stderr.write(
    `tenonwright: standard output cannot be written (the system says ${code}): make room, or send it elsewhere\n`,
  );
  process.exit(2);
});

// progress that nobody reads is no reason to leave the work undone
process.stderr.on('error', () => {});

// only now: an older Node would stumble over the code itself
const { run } = await import('./run.js');
process.exitCode = await run(process.argv.slice(2), {
  out: process.stdout,
  err: process.stderr,
  isTerminal: process.stderr.isTTY === true,
  cwd: process.cwd(),
  ...(process.stdout.columns > 0 && { columns: process.stdout.columns }),
});
