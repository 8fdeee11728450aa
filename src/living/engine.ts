import { unzipSync } from 'fflate';
import type { LivingData, LivingState } from '../files/index.js';
import { asBytes } from './as-bytes.js';
import type { Answer, Asked, Outfit, Wanted } from './messages.js';
import type { Schema } from './words-at.js';

/** The program at work beside the page. Each question has a number, which its answers carry. */
export interface Engine {
  readonly show: (state: LivingState, dragged: boolean) => number;
  readonly save: (state: LivingState, wanted: Wanted, force: boolean) => number;
  readonly cure: (state: LivingState) => number;
  /** Asks for the state's shop as a form. */
  readonly shop: (state: LivingState) => number;
  /** What may stand in a piece's file. */
  readonly schema: Schema;
}

export interface Listener {
  readonly hear: (answer: Answer) => void;
  /** A question took longer than the page has patience for; the program was started anew. */
  readonly stopped: (asked: Asked) => void;
}

/** What is worked out in one go may take longer than a stage of what is shown. */
const WHOLE = 4;

/** What the page holds for the program beside its own script. */
export interface Held {
  /** The ZIP that the build made, as text. */
  readonly engine: string;
  /** What draws PNG pictures, packed likewise. */
  readonly renderer: string | undefined;
  /** The preview page's script. */
  readonly viewer: string;
}

/** Starts the program in a worker made of the page's own bytes. */
export function startEngine(
  { engine, renderer, viewer }: Held,
  { version, designs, start, patience, written }: LivingData,
  flat: boolean,
  { hear, stopped }: Listener,
): Engine {
  const parts = unzipSync(asBytes(engine.trim()));
  const part = (name: string): Uint8Array<ArrayBuffer> => new Uint8Array(parts[name]!);
  const script = URL.createObjectURL(new Blob([part('worker.js')], { type: 'text/javascript' }));
  const outfit: Outfit = {
    kind: 'outfit',
    version,
    designs,
    start,
    written,
    kernel: part('manifold.wasm').buffer,
    plain: part('plain.woff'),
    bold: part('bold.woff'),
    viewer,
    renderer,
  };
  const open = new Map<number, Asked>();
  let number = 0;
  let worker = begin();
  let timer = 0;

  function begin(): Worker {
    const one = new Worker(script);
    one.onmessage = ({ data }: MessageEvent<Answer>) => {
      if (LAST.has(data.kind)) open.delete(data.number);
      watch();
      hear(data);
    };
    one.onerror = ({ message }) => hear({ kind: 'fault', number, text: message });
    one.postMessage(outfit);
    return one;
  }
  /** The clock starts anew with every answer: what goes on is left alone. */
  function watch(): void {
    clearTimeout(timer);
    if (open.size === 0) return;
    const whole = [...open.values()].some(({ kind }) => kind !== 'show');
    timer = window.setTimeout(
      () => {
        worker.terminate();
        const left = [...open.values()];
        open.clear();
        worker = begin();
        for (const asked of left) stopped(asked);
      },
      whole ? WHOLE * patience : patience,
    );
  }
  const ask = (question: (number: number) => Asked): number => {
    number += 1;
    const asked = question(number);
    // of states only the latest is answered to the end
    if (asked.kind === 'show') for (const [id, { kind }] of open) if (kind === 'show') open.delete(id);
    open.set(number, asked);
    worker.postMessage(asked);
    watch();
    return number;
  };
  return {
    schema: JSON.parse(new TextDecoder().decode(part('piece.schema.json'))),
    show: (state, dragged) => ask((n) => ({ kind: 'show', number: n, state, flat, dragged })),
    save: (state, wanted, force) => ask((n) => ({ kind: 'save', number: n, state, wanted, force })),
    cure: (state) => ask((n) => ({ kind: 'cure', number: n, state })),
    shop: (state) => ask((n) => ({ kind: 'shop', number: n, state })),
  };
}

/** The last answer to each kind of question. */
const LAST: ReadonlySet<Answer['kind']> = new Set(['settled', 'refused', 'fault', 'saved', 'cured', 'shop']);
