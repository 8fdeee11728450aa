import { AT_FIRST, type Choices, stepsOf } from '../over/index.js';
import type { Seen } from '../stage/index.js';
import type { Point, PreviewData } from '../told/index.js';

/** What a link brings back: where the eye is, and what was chosen to be seen. */
export interface View {
  readonly seen: Seen;
  readonly choices: Pick<Choices, (typeof KEPT)[number]>;
}

const KEPT = [
  'apart',
  'step',
  'along',
  'axis',
  'cut',
  'seeThrough',
  'sizes',
  'stands',
  'chosen',
  'hidden',
] as const;

const TICKS = ['seeThrough', 'sizes', 'stands'] as const;

/** The farthest and nearest the eye may stand, mm. */
const [NEAREST, FARTHEST] = [1, 1e6];

/** A view as the fragment of an address, without its `#`. */
export function linkTo({ seen, choices }: View, { revision }: Pick<PreviewData, 'revision'>): string {
  const { eye, target, flat } = seen;
  const { apart, step, along, axis, cut, chosen, hidden } = choices;
  const numbers = (...all: readonly number[]): string => all.map((one) => String(+one.toFixed(3))).join(',');
  const names = (all: ReadonlySet<string>): string => [...all].map(encodeURIComponent).join(',');
  const parts: readonly (readonly [name: string, value: string])[] = [
    ['revision', encodeURIComponent(revision)],
    ['eye', numbers(...eye)],
    ['at', numbers(...target)],
    ['flat', flat ? 'yes' : ''],
    ['apart', apart > 0 ? numbers(apart) : ''],
    ['step', step === undefined ? '' : numbers(step, along)],
    ['cut', axis === undefined ? '' : numbers(axis, cut)],
    ['see', TICKS.filter((tick) => choices[tick]).join(',')],
    ['chosen', names(chosen)],
    ['hidden', names(hidden)],
  ];
  return parts
    .filter(([, value]) => value !== '')
    .map((part) => part.join('='))
    .join('&');
}

/** Why a link is not followed, in words for the person. */
class Refused extends Error {}

/**
 * Reads a link to a view. It may come from anywhere: every part must be one this page writes, for this very revision.
 *
 * @returns the view, or why it is refused
 */
export function readLink(fragment: string, data: PreviewData): View | string {
  try {
    return read(fragment, data);
  } catch (error) {
    if (error instanceof Refused || error instanceof URIError) {
      const why = error instanceof Refused ? error.message : 'it is not written as a link of this page is';
      return `The link was not followed: ${why}.`;
    }
    throw error;
  }
}

/** As much of a foreign text as is repeated. */
const short = (text: string): string => (text.length > 24 ? `${text.slice(0, 24)}…` : text);

function read(fragment: string, data: PreviewData): View {
  const parts = new Map<string, string>();
  for (const part of fragment.split('&')) {
    const [name = '', value = '', ...more] = part.split('=');
    if (!PARTS.includes(name) || more.length > 0 || parts.has(name))
      throw new Refused(`it holds "${short(part)}", which no link of this page does`);
    parts.set(name, value);
  }
  const revision = decodeURIComponent(parts.get('revision') ?? '');
  if (revision !== data.revision)
    throw new Refused(
      `it was made for revision ${short(revision) || '(none)'} of the design, and this page shows ${data.revision}`,
    );
  const numbers = (name: string, ends: readonly (readonly [least: number, most: number])[]): number[] => {
    const told = (parts.get(name) ?? '').split(',');
    const all = told.map(Number);
    const fits =
      all.length === ends.length && ends.every(([least, most], i) => all[i]! >= least && all[i]! <= most);
    if (!fits || told.some((one) => one.trim() === ''))
      throw new Refused(`its "${name}" is "${short(parts.get(name) ?? '')}", which is no place on this page`);
    return all;
  };
  const point = (name: string): Point => {
    const anywhere = [-FARTHEST, FARTHEST] as const;
    const [x, y, z] = numbers(name, [anywhere, anywhere, anywhere]) as [number, number, number];
    return [x, y, z];
  };
  const names = (name: string): ReadonlySet<string> => {
    const all = (parts.get(name) ?? '')
      .split(',')
      .filter((one) => one !== '')
      .map(decodeURIComponent);
    const strange = all.find((id) => !data.pieces.some((piece) => piece.id === id));
    if (strange !== undefined)
      throw new Refused(`it names "${short(strange)}", which is no part of this piece`);
    return new Set(all);
  };
  const whole = (of: number, name: string): number => {
    if (!Number.isInteger(of)) throw new Refused(`its "${name}" is no whole number`);
    return of;
  };
  const [eye, target] = [point('eye'), point('at')];
  const far = Math.hypot(...eye.map((part, i) => part - target[i]!));
  if (far < NEAREST) throw new Refused('its eye stands where it looks');
  const [step, along] = parts.has('step')
    ? numbers('step', [
        [0, stepsOf(data).length - 1],
        [0, 1],
      ])
    : [undefined, AT_FIRST.along];
  const [axis, cut] = parts.has('cut')
    ? numbers('cut', [
        [0, 2],
        [0, 1],
      ])
    : [undefined, AT_FIRST.cut];
  const seen = (parts.get('see') ?? '').split(',').filter((one) => one !== '');
  const strange = seen.find((one) => !TICKS.some((tick) => tick === one));
  if (strange !== undefined) throw new Refused(`it asks to see "${short(strange)}"`);
  return {
    seen: { eye, target, flat: parts.get('flat') === 'yes' },
    choices: {
      apart: parts.has('apart') ? numbers('apart', [[0, 1]])[0]! : 0,
      step: step === undefined ? undefined : whole(step, 'step'),
      along: along!,
      axis: axis === undefined ? undefined : (whole(axis, 'cut') as 0 | 1 | 2),
      cut: cut!,
      seeThrough: seen.includes('seeThrough'),
      sizes: seen.includes('sizes'),
      stands: seen.includes('stands'),
      chosen: names('chosen'),
      hidden: names('hidden'),
    },
  };
}

const PARTS: readonly string[] = [
  'revision',
  'eye',
  'at',
  'flat',
  'apart',
  'step',
  'cut',
  'see',
  'chosen',
  'hidden',
];
