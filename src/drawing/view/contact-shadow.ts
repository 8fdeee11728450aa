import { type Frame, frame, pointIn, type Vec2 } from '../../frame/index.js';
import { grown, type Region, unite } from '../../profile/index.js';
import type { Colour, Tone } from '../sheet/index.js';
import { cornersSeen } from './scene.js';
import type { SeenPart } from './seen-part.js';
import { shownFaces } from './shown-faces.js';

/** A ring of a soft shadow: how far it reaches beyond what casts it, in shares of the piece's width, and its grey. */
interface Rim {
  readonly reach: number;
  readonly colour: Colour;
}

/** Rings from the outermost inwards, ever darker. */
const rings = (count: number, widest: number, pale: number, dark: number): readonly Rim[] =>
  Array.from({ length: count }, (_, i) => {
    const share = i / (count - 1);
    const grey = Math.round(pale + (dark - pale) * share ** 1.3).toString(16);
    return { reach: widest * (1 - share) + 0.004, colour: `#${grey}${grey}${grey}` };
  });

const UNDER = rings(7, 0.075, 248, 214);
const CONTACT = rings(6, 0.03, 205, 140);

/** What counts as standing on the floor, mm above it. */
const ON_FLOOR = 3;

const ABOVE = frame([0, 0, 0], [0, 0, 1], [1, 0, 0]);
const BELOW = frame([0, 0, 0], [0, 0, -1], [1, 0, 0]);

/**
 * The soft shadow of a piece on the floor it stands on: pale below all of it, dark where it touches.
 *
 * @param view from above; the floor is at the parts' lowest point, square to z
 */
export function contactShadow(parts: readonly SeenPart[], view: Frame): readonly Tone[] {
  const facing = (way: Frame) =>
    parts.flatMap((part) => shownFaces(part, cornersSeen(part, way), way, () => 0));
  const below = facing(BELOW);
  const over = facing(ABOVE).flatMap(({ loops }) => loops);
  if (below.length === 0 || over.length === 0) return [];
  // seen from below, what is lowest is nearest
  const nearest = below.map(({ depth, loops }) =>
    Math.max(...loops.flat().map(([x, y]) => depth[0] * x + depth[1] * y + depth[2])),
  );
  const floor = Math.max(...nearest);
  const feet = below.flatMap(({ loops, normal }, i) =>
    nearest[i]! > floor - ON_FLOOR && normal[2] > 0.9
      ? loops.map((loop) => loop.map(([x, y]): Vec2 => [x, -y]).toReversed())
      : [],
  );
  const xs = over.flatMap((loop) => loop.map(([x]) => x));
  const wide = Math.max(...xs) - Math.min(...xs);
  const onFloor = ([x, y]: Vec2): Vec2 => {
    const [u, v] = pointIn(view, [x, y, -floor]);
    return [u, v];
  };
  const rims = (cast: Region, all: readonly Rim[]) =>
    all.map(
      ({ reach, colour }): Tone => ({
        kind: 'tone',
        part: 'shadow',
        colour,
        loops: grown(cast, reach * wide, wide / 2000).map((loop) => loop.map(onFloor)),
        marks: [],
        ink: colour,
      }),
    );
  return [...rims(unite(over), UNDER), ...(feet.length > 0 ? rims(unite(feet), CONTACT) : [])];
}
