#!/usr/bin/env node
import { run } from './run.js';

/** A reader that has seen enough, like `head`, closes the pipe: that is no fault. */
for (const pipe of [process.stdout, process.stderr])
  pipe.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0);
    throw error;
  });

process.exitCode = await run(process.argv.slice(2), {
  out: process.stdout,
  err: process.stderr,
  isTerminal: process.stderr.isTTY === true,
  cwd: process.cwd(),
  ...(process.stdout.columns > 0 && { columns: process.stdout.columns }),
});
