import process from 'node:process';

const SIGNALS = ['SIGINT', 'SIGTERM'] as const;

/** Works that hold the signals now, or a moment ago. */
let holders = 0;

const obey = (signal: NodeJS.Signals): void => {
  letGo();
  process.kill(process.pid, signal);
};

const letGo = (): void => {
  holders = 0;
  for (const signal of SIGNALS) process.off(signal, obey);
};

/** Does a short work whole: a signal to end that comes meanwhile is obeyed after it. */
export function withSignalsHeld<T>(work: () => T): T {
  if (holders === 0) for (const signal of SIGNALS) process.on(signal, obey);
  holders += 1;
  try {
    return work();
  } finally {
    // signals are handed out between the turns of the loop: what came meanwhile comes first
    setImmediate(() =>
      setImmediate(() => {
        holders -= 1;
        if (holders <= 0) letGo();
      }),
    );
  }
}
