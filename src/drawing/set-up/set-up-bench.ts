import type { Vec2, Vec3 } from '../../frame/index.js';
import { type Profile, rectangle, regionOf } from '../../profile/index.js';
import { type Body, featureEdges, type Kernel, prism } from '../../solid/index.js';
import type { Colour } from '../sheet/index.js';
import type { Look, SeenPart } from '../view/index.js';

export const COLOURS = {
  work: '#dcc9a3',
  aid: '#c9773f',
  rail: '#a58f78',
  plate: '#6f6258',
  router: '#5f6b78',
  steel: '#aab2b8',
} as const satisfies Record<string, Colour>;

/** Solids of a set-up being put together, in the frame of the mortise: x along it, y away from the person, z out of the wood. */
export class SetUpBench {
  readonly parts: SeenPart[] = [];
  /** The word for each part that is named, by its id. */
  readonly names = new Map<string, string>();

  constructor(private readonly kernel: Kernel) {}

  /** Puts a body there, which is freed; parts of one name are named once. */
  readonly put = (words: string, body: Body, look: Look | Colour): void => {
    const again = this.names.has(words);
    const id = again ? `${words} ${this.parts.length}` : words;
    if (!body.isEmpty()) {
      const seen = typeof look === 'string' ? { colour: look } : look;
      this.parts.push({ id, solid: featureEdges(body), look: seen });
      if (!again) this.names.set(id, words);
    }
    body.delete();
  };

  readonly solid = (outline: Profile, from: number, to: number): Body =>
    prism(this.kernel, regionOf(outline), from, to, undefined);

  /** @param low, high opposite corners */
  readonly block = (low: Vec3, high: Vec3): Body =>
    this.solid(
      rectangle({ x: low[0], y: low[1], length: high[0] - low[0], width: high[1] - low[1] }),
      low[2],
      high[2],
    );

  /** Less an opening right through it. */
  readonly opened = (body: Body, opening: Profile): Body => {
    const bore = this.solid(opening, -1000, 1000);
    const rest = body.subtract(bore);
    bore.delete();
    body.delete();
    return rest;
  };

  /** What of a body lies on the left of the mortise's middle. */
  readonly halved = (body: Body): Body => kept(body, [-1, 0, 0], 0);

  /** What of a body lies within a box: only what is near is shown. @param low, high opposite corners, the upper ones no limit upwards */
  readonly near = (body: Body, low: Vec3, high: Vec2): Body => {
    const sides: readonly (readonly [Vec3, number])[] = [
      [[1, 0, 0], low[0]],
      [[0, 1, 0], low[1]],
      [[0, 0, 1], low[2]],
      [[-1, 0, 0], -high[0]],
      [[0, -1, 0], -high[1]],
    ];
    return sides.reduce((rest, [normal, offset]) => kept(rest, normal, offset), body);
  };
}

function kept(body: Body, normal: Vec3, offset: number): Body {
  const half = body.trimByPlane([...normal], offset);
  body.delete();
  return half;
}

/** A circle of as few sides as still look round. */
export const round = (diameter: number, [x, y]: Vec2 = [0, 0]): Profile =>
  Array.from({ length: 24 }, (_, i) => {
    const turn = (i * Math.PI) / 12;
    return { x: x + (diameter / 2) * Math.cos(turn), y: y + (diameter / 2) * Math.sin(turn), bulge: 0 };
  });
