import type { Choices, Pixel } from '../over/index.js';
import type { Stage } from '../stage/index.js';
import { VIEWS, type ViewName } from '../told/index.js';
import { KEYS } from './keys.js';
import type { Looker } from './looker.js';
import { onPage, piecesOfRow, rows, say } from './on-page.js';
import type { Measure } from './wire-measure.js';
import { hideChosen } from './wire-panel.js';

/** A press that moves less is a tap, in pixels. */
const TAP = 5;

/** A turn of the picture by one press of a key, radians; a move, in shares of the picture. */
const [TURN, MOVE] = [0.12, 0.06];

/** Pointing at the picture: hovering lights a piece and its row, a tap chooses it. */
export function wirePointer(looker: Looker, stage: Stage, measure: Measure): void {
  const { change, choose, now } = looker;
  const { canvas } = stage;
  const label = onPage('under');
  const pixelOf = ({ clientX, clientY }: PointerEvent): Pixel => {
    const { left, top } = canvas.getBoundingClientRect();
    return [clientX - left, clientY - top];
  };
  const light = (at: Pixel | undefined): void => {
    const id = at && stage.pick(...at);
    change({ hovered: new Set(id === undefined ? [] : [id]) });
    label.textContent = looker.data.pieces.find((piece) => piece.id === id)?.name ?? '';
  };
  const hover = (event: PointerEvent): void => {
    const [x, y] = pixelOf(event);
    if (now().measuring) measure.aim([x, y]);
    else light([x, y]);
    label.style.left = `${x}px`;
    label.style.top = `${y}px`;
    label.toggleAttribute('data-left', x > canvas.clientWidth * 0.7);
  };
  canvas.addEventListener('pointermove', (event) => {
    if (event.buttons === 0 && event.pointerType === 'mouse') hover(event);
  });
  canvas.addEventListener('pointerleave', () => light(undefined));
  let pressed: PointerEvent | undefined;
  canvas.addEventListener('pointerdown', (event) => {
    pressed = event.isPrimary ? event : undefined;
    label.textContent = '';
  });
  canvas.addEventListener('pointerup', (event) => {
    if (!pressed || Math.hypot(event.clientX - pressed.clientX, event.clientY - pressed.clientY) > TAP)
      return;
    const at = pixelOf(event);
    if (now().measuring) {
      measure.set(at, event.pointerType !== 'mouse');
      return;
    }
    const id = stage.pick(...at);
    choose(id === undefined ? [] : [id]);
    if (id !== undefined) showRow(id);
  });
}

/** Brings the row of a piece into sight, within its own list only: the page itself stays where it is. */
function showRow(id: string): void {
  const row = rows().find(
    (one) => ['board', 'joint', 'hardware'].includes(one.dataset.go!) && piecesOfRow(one).includes(id),
  );
  const panel = onPage('panel');
  if (!row || panel.scrollHeight <= panel.clientHeight) return;
  const [inner, outer] = [row.getBoundingClientRect(), panel.getBoundingClientRect()];
  if (inner.top < outer.top || inner.bottom > outer.bottom) {
    panel.scrollTop += inner.top - outer.top - outer.height / 3;
  }
}

/** Keys of the picture; in the panel its own controls have theirs. */
export function wireKeys(looker: Looker, stage: Stage, measure: Measure): void {
  const { now, change, player } = looker;
  const nextAxis = (axis: Choices['axis']): Choices['axis'] =>
    axis === undefined ? 0 : axis === 2 ? undefined : ((axis + 1) as 1 | 2);
  const cutBy = (by: number): void => change({ cut: Math.min(1, Math.max(0, now().cut + by)) });
  const acts: Readonly<Record<string, () => void>> = {
    left: () => stage.orbit(-TURN, 0),
    right: () => stage.orbit(TURN, 0),
    up: () => stage.orbit(0, TURN),
    down: () => stage.orbit(0, -TURN),
    nearer: () => stage.zoom(0.85),
    farther: () => stage.zoom(1 / 0.85),
    apart: () => change({ apart: now().apart > 0.5 ? 0 : 1 }),
    through: () => change({ seeThrough: !now().seeThrough }),
    sizes: () => change({ sizes: !now().sizes }),
    section: () => {
      change({ axis: nextAxis(now().axis) });
      const { selectedOptions } = onPage<HTMLSelectElement>('axis');
      say(`section plane: ${selectedOptions[0]?.textContent}`);
    },
    'cut back': () => cutBy(-0.01),
    'cut on': () => cutBy(0.01),
    play: player.toggle,
    before: () => player.by(-1),
    after: () => player.by(1),
    measure: measure.toggle,
    hide: () => hideChosen(looker),
    nothing: () => {
      looker.choose([]);
      player.goTo(undefined);
    },
    ...Object.fromEntries(
      Object.keys(VIEWS).map((name) => [`view ${name}`, () => stage.view(name as ViewName)]),
    ),
  };
  const moves: Readonly<Record<string, readonly [number, number]>> = {
    ArrowLeft: [-MOVE, 0],
    ArrowRight: [MOVE, 0],
    ArrowUp: [0, MOVE],
    ArrowDown: [0, -MOVE],
  };
  document.addEventListener('keydown', (event) => {
    const inPicture = event.target === document.body || onPage('stage').contains(event.target as Node);
    if (!inPicture || event.ctrlKey || event.metaKey || event.altKey) return;
    if (measure.key(event)) {
      event.preventDefault();
      return;
    }
    const move = event.shiftKey ? moves[event.key] : undefined;
    const found = Object.entries(KEYS).find(([, { keys }]) => keys.includes(event.key))?.[0];
    if (!move && found === undefined) return;
    event.preventDefault();
    if (move) stage.pan(...move);
    else acts[found!]?.();
  });
}
