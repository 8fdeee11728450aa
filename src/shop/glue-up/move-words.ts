import { scale, type Vec3 } from '../../frame/index.js';
import { printAngle } from '../../length/index.js';

/** Against and along each axis of the assembly, to the person in front of the piece. */
const WORDS = [
  ['to the left', 'to the right'],
  ['towards you', 'away from you'],
  ['down', 'up'],
] as const;

/** Below this an angle is not told, degrees: a hand does not feel it, and a mortise takes it. */
const LEAST_DEG = 0.3;

/**
 * Which way a group travels, to the person in front of the piece: `straight down`, `to the right, 10.0° down`, or with both
 * leans when it leans two ways.
 *
 * @param direction of the move, assembly frame: x to the right, y away from the person, z up
 */
export function moveWords(direction: Vec3): string {
  const [main, ...others] = shares(direction);
  const leans = others
    .map(({ size, words }) => ({ lean: (Math.atan2(size, main!.size) * 180) / Math.PI, words }))
    .filter(({ lean }) => lean > LEAST_DEG)
    .map(({ lean, words }) => `${printAngle(lean)} ${words}`);
  return leans.length === 0 ? `straight ${main!.words}` : `${main!.words}, ${leans.join(' and ')}`;
}

/**
 * How a bar that follows neither the floor nor the front lies: `up, 10° to the right`; undefined for one that does.
 *
 * @param direction along the bar, either way, assembly frame
 */
export function leanWords(direction: Vec3): string | undefined {
  const words = moveWords(shares(direction)[0]!.share < 0 ? scale(direction, -1) : direction);
  return words.startsWith('straight') ? undefined : words;
}

/** The way a direction points most, to the person in front of the piece: `up`, `to the left`, `towards you`. */
export const mostlyWords = (direction: Vec3): string => shares(direction)[0]!.words;

const shares = (
  direction: Vec3,
): readonly { readonly share: number; readonly size: number; readonly words: string }[] =>
  direction
    .map((share, i) => ({ share, size: Math.abs(share), words: WORDS[i]![share < 0 ? 0 : 1] }))
    .toSorted((a, b) => b.size - a.size);
