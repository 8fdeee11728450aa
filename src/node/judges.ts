/** What a worker is asked, and what it says. */
export interface Ask {
  readonly id: number;
  readonly about: unknown;
}

export interface Said {
  readonly id: number;
  readonly answer: unknown;
}

/** Workers that answer one question each at a time, in turn. */
export interface Judges {
  ask(about: unknown): Promise<unknown>;
  /** Ends the workers; questions that are open are never answered. */
  end(): Promise<void>;
}

/**
 * Starts workers on one script, which answers each `Ask` it is sent with a `Said`.
 *
 * @param data what every worker starts from
 * @returns asks whose promise fails with whatever a worker failed with
 */
export async function startJudges(script: URL, data: unknown, count: number): Promise<Judges> {
  const { Worker } = await import('node:worker_threads');
  const open = new Map<number, { resolve(answer: unknown): void; reject(error: unknown): void }>();
  const waiting: Ask[] = [];
  let failure: unknown;
  const workers = Array.from({ length: count }, () => new Worker(script, { workerData: data }));
  const free = [...workers];
  const next = (): void => {
    while (free.length > 0 && waiting.length > 0) free.pop()!.postMessage(waiting.shift()!);
  };
  for (const worker of workers) {
    worker.on('message', ({ id, answer }: Said) => {
      open.get(id)?.resolve(answer);
      open.delete(id);
      free.push(worker);
      next();
    });
    worker.on('error', (error) => {
      failure = error;
      for (const { reject } of open.values()) reject(error);
      open.clear();
      waiting.length = 0;
    });
  }
  let asked = 0;
  return {
    ask: (about) =>
      new Promise((resolve, reject) => {
        if (failure !== undefined) {
          reject(failure);
          return;
        }
        asked += 1;
        open.set(asked, { resolve, reject });
        waiting.push({ id: asked, about });
        next();
      }),
    end: async () => {
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}
