#!/usr/bin/env node
import { run } from './run.js';

/** A reader that has seen enough, like `head`, closes the pipe: that is no fault. */
const isClosedPipe = (error: NodeJS.ErrnoException): boolean => error.code === 'EPIPE';

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (isClosedPipe(error)) process.exit(0);
  throw error;
});

// progress that nobody reads is no reason to leave the work undone
process.stderr.on('error', (error: NodeJS.ErrnoException) => {
  if (!isClosedPipe(error)) throw error;
});

process.exitCode = await run(process.argv.slice(2), {
  out: process.stdout,
  err: process.stderr,
  isTerminal: process.stderr.isTTY === true,
  cwd: process.cwd(),
  ...(process.stdout.columns > 0 && { columns: process.stdout.columns }),
});
