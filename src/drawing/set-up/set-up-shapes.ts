import type { Vec2 } from '../../frame/index.js';
import { obround, segments } from '../../profile/index.js';
import type { SetupCard } from '../../shop/index.js';
import { type LineKind, letters, path, SMALL, type Stroke, stroke } from '../sheet/index.js';
import { RAIL, type SetUpSize, STOP } from './set-up-size.js';

/** Where the set-up comes to lie on the sheet. */
export interface OnSheet {
  /** @param x from the cutter's centre to the right, mm; y away from the person */
  readonly at: (x: number, y: number) => Vec2;
  /** mm on the sheet for each mm. */
  readonly factor: number;
}

/** What lies on the bench, seen from above, with its names; the centre lines cross under the cutter. */
export function setUpShapes(card: SetupCard, size: SetUpSize, on: OnSheet): readonly Stroke[] {
  return [
    ...work(card, size, on),
    ...rails(card, size, on),
    ...(card.window ? [] : stopsAndWhatTravels(card, size, on)),
    ...mortise(card, on),
    stroke('centre', on.at(0, -size.low), on.at(0, size.high)),
    stroke('centre', on.at(-size.reach, 0), on.at(size.reach, 0)),
  ];
}

/** Air between words and the line they stand on, mm on the sheet. */
const AIR = 1.2;

function work(card: SetupCard, { reach }: SetUpSize, on: OnSheet): readonly Stroke[] {
  const { nearRail, farRail, travelling, window } = card;
  if (!nearRail) return [];
  const [near, far] = [nearRail.toWork, farRail?.toWork ?? 40];
  // between what travels and the right stop nothing lies but the centre line
  const [x, y] = on.at(window ? reach * 0.75 : travelling.along / 2, 0);
  return [
    box(on, 'neighbour', [-reach * 0.97, -near], [reach * 0.97, far]),
    // what is too thin to write in lies between two rails with names
    ...(far * on.factor < SMALL + 3 * AIR ? [] : [letters([x, y + AIR], 'work', { anchor: 'middle' })]),
  ];
}

/** Rails are too thin to write in: their names stand beyond them, clear of the dimensions of stops and mortise. */
function rails(card: SetupCard, { near, far, reach }: SetUpSize, on: OnSheet): readonly Stroke[] {
  const { nearRail, farRail, guideOffset, stopDistance, mortiseLength, window } = card;
  const left = window ? -reach : -stopDistance;
  const rail = (from: number, words: string): readonly Stroke[] => {
    const to = from + RAIL;
    const [x, y] = from < 0 ? on.at(left, from) : on.at(mortiseLength / 2, to);
    return [
      box(on, 'visible', [-reach, from], [reach, to]),
      letters([x + AIR, from < 0 ? y - AIR - SMALL : y + AIR], words),
    ];
  };
  return [
    ...(nearRail ? rail(-near - RAIL, 'near rail') : []),
    ...(farRail ? rail(far, 'far rail') : []),
    ...(guideOffset === undefined ? [] : rail(guideOffset, 'guide board')),
  ];
}

/** The jig's plate or the router's base stands against the left stop. */
function stopsAndWhatTravels(card: SetupCard, size: SetUpSize, on: OnSheet): readonly Stroke[] {
  const { stopDistance, guideOffset, travelling } = card;
  const [low, high] = [Math.min(size.low, 30), Math.min(size.high, 30)];
  const half = travelling.along / 2;
  const middle = half - stopDistance;
  return [
    ...[-1, 1].map((side) =>
      box(on, 'visible', [side * stopDistance, -low], [side * (stopDistance + STOP), high]),
    ),
    box(
      on,
      'hidden',
      [middle - half, -(guideOffset ?? Math.min(size.near, 24))],
      [middle + half, guideOffset ?? Math.min(size.far, 24)],
    ),
  ];
}

function mortise({ mortiseLength, cutter }: SetupCard, on: OnSheet): readonly Stroke[] {
  return segments(obround({ length: mortiseLength, width: cutter })).map((piece): Stroke => {
    if (piece.kind === 'line') return stroke('visible', on.at(...piece.from), on.at(...piece.to));
    const { centre, radius, startDeg, includedDeg, sense } = piece;
    return {
      kind: 'arc',
      line: 'visible',
      centre: on.at(...centre),
      radius: radius * on.factor,
      startDeg: sense === 'clockwise' ? startDeg - includedDeg : startDeg,
      sweepDeg: includedDeg,
    };
  });
}

function box(on: OnSheet, line: LineKind, [x1, y1]: Vec2, [x2, y2]: Vec2): Stroke {
  return path(line, [on.at(x1, y1), on.at(x2, y1), on.at(x2, y2), on.at(x1, y2)], true);
}
