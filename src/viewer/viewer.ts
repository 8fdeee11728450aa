import type { Point, PreviewData, PreviewPiece } from './preview-data.js';
import { openStage, type Stage, VIEWS, type ViewName } from './scene.js';

const data: PreviewData = JSON.parse(document.getElementById('design')!.textContent ?? '');
const byId = new Map(data.pieces.map((piece) => [piece.id, piece]));

/** What the person has chosen. */
const state = {
  apart: 0,
  step: data.steps.length,
  along: 1,
  seeThrough: false,
  axis: undefined as 0 | 1 | 2 | undefined,
  cut: 0.5,
  chosen: new Set<string>(),
  hovered: new Set<string>(),
};

const element = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;
const say = (text: string): void => {
  element('told').textContent = text;
};

/** Millimetres and inches to the nearest 1/64. */
function both(mm: number): string {
  const sign = mm < 0 ? '-' : '';
  const parts = Math.round((Math.abs(mm) / 25.4) * 64);
  const whole = Math.floor(parts / 64);
  let [top, under] = [parts % 64, 64];
  while (top > 0 && top % 2 === 0) [top, under] = [top / 2, under / 2];
  const inches = top === 0 ? `${whole}` : whole === 0 ? `${top}/${under}` : `${whole}-${top}/${under}`;
  return `${(Math.round(mm * 10) / 10).toFixed(1)} mm (${sign}${inches}″)`;
}

const sizeText = ({ size }: PreviewPiece): string => (size ? size.map(both).join(' × ') : '');

function row(
  parent: HTMLElement,
  label: string,
  detail: string,
  ids: readonly string[],
  go: () => void,
): void {
  const item = document.createElement('li');
  const button = document.createElement('button');
  button.type = 'button';
  button.dataset.ids = ids.join('\n');
  const strong = document.createElement('strong');
  strong.textContent = label;
  button.append(strong);
  if (detail) {
    const small = document.createElement('span');
    small.textContent = detail;
    button.append(small);
  }
  button.addEventListener('click', go);
  item.append(button);
  parent.append(item);
}

function lists(stage: Stage | undefined): void {
  for (const piece of data.pieces.filter(({ role }) => role !== 'tenon')) {
    row(
      element('boards'),
      piece.name,
      [sizeText(piece), piece.note].filter(Boolean).join(', '),
      [piece.id],
      () => {
        choose([piece.id], stage);
        say(`${piece.name}: ${sizeText(piece)} ${piece.note}`);
        stage?.flyTo(stage.middleOf(piece.id), radiusOf(piece));
      },
    );
  }
  for (const joint of data.joints) {
    const names = joint.boards.map((id) => byId.get(id)?.name ?? id).join(' to ');
    const gaps = joint.clearances.map(({ text, mm }) => `${text} ${mm.toFixed(2)} mm`).join(', ');
    row(element('joints'), names, gaps, joint.tenons, () => {
      choose(joint.tenons, stage);
      setSeeThrough(true, stage);
      say(`${names}: ${gaps}`);
      const tenon = byId.get(joint.tenons[0] ?? '');
      if (tenon && stage) stage.flyTo(stage.middleOf(tenon.id), 2 * radiusOf(tenon));
    });
  }
  if (data.findings.length === 0) {
    const none = document.createElement('li');
    none.textContent = 'Nothing found: every check passed.';
    element('findings').append(none);
  }
  for (const finding of data.findings) {
    row(element('findings'), finding.level, `${finding.text}: ${finding.remedy}`, finding.subjects, () => {
      choose(finding.subjects, stage);
      setSeeThrough(true, stage);
      say(`${finding.level}: ${finding.text}`);
      stage?.flyTo(finding.at, 60);
    });
  }
}

const radiusOf = ({ size }: PreviewPiece): number => (size ? Math.hypot(...size) / 2 : 60);

function choose(ids: readonly string[], stage: Stage | undefined): void {
  state.chosen = new Set(ids);
  light(stage);
}

function light(stage: Stage | undefined): void {
  const lit = new Set([...state.chosen, ...state.hovered]);
  stage?.light(lit);
  for (const button of document.querySelectorAll<HTMLButtonElement>('button[data-ids]')) {
    const ids = (button.dataset.ids ?? '').split('\n');
    button.classList.toggle(
      'lit',
      ids.some((id) => lit.has(id)),
    );
  }
}

/** Where everything stands: drawn apart, or part way through the glue-up. */
function place(stage: Stage): void {
  const now = data.steps[state.step];
  const later = new Set(data.steps.slice(state.step + 1).flatMap((step) => [...step.moving, ...step.still]));
  const done = new Set(
    data.steps.slice(0, state.step + 1).flatMap((step) => [...step.moving, ...step.still]),
  );
  stage.place(
    (id): Point => {
      const apart = byId.get(id)!.apart;
      const [x, y, z] = apart.map((part) => part * state.apart) as [number, number, number];
      if (!now?.moving.includes(id)) return [x, y, z];
      const back = (1 - state.along) * (now.travel + 20);
      return [x - now.direction[0] * back, y - now.direction[1] * back, z - now.direction[2] * back];
    },
    (id) => {
      if (now && later.has(id) && !done.has(id)) return 0.08;
      return state.seeThrough && byId.get(id)!.role === 'board' ? 0.28 : 1;
    },
  );
}

function setSeeThrough(on: boolean, stage: Stage | undefined): void {
  state.seeThrough = on;
  element<HTMLInputElement>('see-through').checked = on;
  if (stage) place(stage);
}

function setStep(step: number, stage: Stage): void {
  state.step = Math.max(0, Math.min(step, data.steps.length));
  state.along = 1;
  element<HTMLInputElement>('along').value = '1';
  const now = data.steps[state.step];
  element('step-text').textContent = now
    ? `Step ${state.step + 1} of ${data.steps.length}: ${now.text}`
    : 'All together.';
  element<HTMLInputElement>('along').disabled = !now;
  place(stage);
}

function setApart(share: number, stage: Stage): void {
  state.apart = Math.max(0, Math.min(share, 1));
  element<HTMLInputElement>('apart').value = String(state.apart);
  place(stage);
}

function setCut(axis: 0 | 1 | 2 | undefined, stage: Stage): void {
  state.axis = axis;
  element<HTMLSelectElement>('axis').value = axis === undefined ? '' : String(axis);
  element<HTMLInputElement>('cut').disabled = axis === undefined;
  stage.cut(axis, state.cut);
}

function theme(stage: Stage | undefined, dark: boolean): void {
  document.documentElement.dataset.theme = dark ? 'dark' : 'light';
  element('theme').textContent = dark ? 'Light' : 'Dark';
  stage?.theme(dark ? '#20242a' : '#f1ede4', dark ? '#0d0f12' : '#2b2620');
}

function wire(stage: Stage): void {
  const on = (id: string, event: string, act: (value: string) => void): void =>
    element<HTMLInputElement>(id).addEventListener(event, () => act(element<HTMLInputElement>(id).value));
  on('apart', 'input', (value) => setApart(Number(value), stage));
  on('along', 'input', (value) => {
    state.along = Number(value);
    place(stage);
  });
  on('cut', 'input', (value) => {
    state.cut = Number(value);
    stage.cut(state.axis, state.cut);
  });
  on('axis', 'change', (value) => setCut(value === '' ? undefined : (Number(value) as 0 | 1 | 2), stage));
  element('see-through').addEventListener('change', () =>
    setSeeThrough(element<HTMLInputElement>('see-through').checked, stage),
  );
  element('before').addEventListener('click', () => setStep(state.step - 1, stage));
  element('after').addEventListener('click', () => setStep(state.step + 1, stage));
  for (const button of document.querySelectorAll<HTMLButtonElement>('button[data-view]')) {
    button.addEventListener('click', () => stage.view(button.dataset.view as ViewName));
  }

  const under = (event: PointerEvent): string | undefined => {
    const box = stage.canvas.getBoundingClientRect();
    const x = ((event.clientX - box.left) / box.width) * 2 - 1;
    const y = 1 - ((event.clientY - box.top) / box.height) * 2;
    return stage.pick(x, y);
  };
  let pressed: { x: number; y: number } | undefined;
  stage.canvas.addEventListener('pointermove', (event) => {
    if (event.buttons !== 0) return;
    const id = under(event);
    state.hovered = new Set(id === undefined ? [] : [id]);
    light(stage);
  });
  stage.canvas.addEventListener('pointerleave', () => {
    state.hovered = new Set();
    light(stage);
  });
  stage.canvas.addEventListener('pointerdown', (event) => {
    pressed = { x: event.clientX, y: event.clientY };
  });
  stage.canvas.addEventListener('pointerup', (event) => {
    if (!pressed || Math.hypot(event.clientX - pressed.x, event.clientY - pressed.y) > 4) return;
    const id = under(event);
    choose(id === undefined ? [] : [id], stage);
    const piece = id === undefined ? undefined : byId.get(id);
    say(piece ? `${piece.name}: ${sizeText(piece)} ${piece.note}` : '');
    document.querySelector<HTMLElement>('.lit')?.scrollIntoView({ block: 'nearest' });
  });
  const panel = element('panel');
  const hover = (event: Event, lit: boolean): void => {
    const button = (event.target as HTMLElement).closest<HTMLButtonElement>('button[data-ids]');
    if (!button) return;
    state.hovered = new Set(lit ? (button.dataset.ids ?? '').split('\n') : []);
    light(stage);
  };
  for (const event of ['pointerover', 'focusin']) panel.addEventListener(event, (e) => hover(e, true));
  for (const event of ['pointerout', 'focusout']) panel.addEventListener(event, (e) => hover(e, false));
}

/** Keys and what they do; shown on the page from this one list. */
const KEYS: readonly {
  readonly keys: readonly string[];
  readonly does: string;
  readonly act: (s: Stage) => void;
}[] = [
  { keys: ['ArrowLeft'], does: 'turn left', act: (s) => s.orbit(-0.12, 0) },
  { keys: ['ArrowRight'], does: 'turn right', act: (s) => s.orbit(0.12, 0) },
  { keys: ['ArrowUp'], does: 'look from higher', act: (s) => s.orbit(0, 0.12) },
  { keys: ['ArrowDown'], does: 'look from lower', act: (s) => s.orbit(0, -0.12) },
  { keys: ['+', '='], does: 'nearer', act: (s) => s.zoom(0.85) },
  { keys: ['-'], does: 'farther', act: (s) => s.zoom(1 / 0.85) },
  ...Object.keys(VIEWS).map((name, i) => ({
    keys: [String(i + 1)],
    does: `from the ${name}`,
    act: (s: Stage) => s.view(name as ViewName),
  })),
  { keys: ['a'], does: 'draw apart or together', act: (s) => setApart(state.apart > 0.5 ? 0 : 1, s) },
  { keys: ['t'], does: 'see through boards', act: (s) => setSeeThrough(!state.seeThrough, s) },
  { keys: [','], does: 'step before', act: (s) => setStep(state.step - 1, s) },
  { keys: ['.'], does: 'step after', act: (s) => setStep(state.step + 1, s) },
  {
    keys: ['c'],
    does: 'next section plane',
    act: (s) =>
      setCut(state.axis === undefined ? 0 : state.axis === 2 ? undefined : ((state.axis + 1) as 1 | 2), s),
  },
];

function keys(stage: Stage): void {
  for (const { keys: names, does } of KEYS) {
    const item = document.createElement('li');
    const key = document.createElement('kbd');
    key.textContent = names[0]!.replace('Arrow', '');
    item.append(key, ` ${does}`);
    element('keys').append(item);
  }
  document.addEventListener('keydown', (event) => {
    const typing =
      event.target instanceof HTMLElement && /^(input|select|textarea)$/i.test(event.target.tagName);
    if (typing || event.ctrlKey || event.metaKey || event.altKey) return;
    const found = KEYS.find(({ keys: names }) => names.includes(event.key));
    if (!found) return;
    event.preventDefault();
    found.act(stage);
  });
}

function start(): void {
  const overall = data.max.map((most, i) => most - data.min[i]!);
  element('size').textContent =
    `${overall.map((size) => both(size)).join(' × ')} over all, width × depth × height`;
  let stage: Stage | undefined;
  try {
    stage = openStage(element<HTMLCanvasElement>('view'), data);
  } catch {
    document.documentElement.dataset.flat = 'yes';
    say('This browser has no WebGL: a still picture is shown instead.');
  }
  lists(stage);
  const prefersDark = window.matchMedia('(prefers-color-scheme: dark)').matches;
  theme(stage, prefersDark);
  element('theme').addEventListener('click', () =>
    theme(stage, document.documentElement.dataset.theme !== 'dark'),
  );
  if (!stage) return;
  wire(stage);
  keys(stage);
  setStep(data.steps.length, stage);
  setCut(undefined, stage);
  stage.view('corner');
  document.documentElement.dataset.ready = 'yes';
}

start();
