import type { Mortise } from '../board/index.js';
import { pointOut, type Vec3 } from '../frame/index.js';
import {
  deflection,
  FOOT_PATCH,
  inertiaOf,
  modulusOf,
  SHEAR_MODULUS_SHARE,
  shearStress,
  workingBreadth,
} from '../statics/index.js';
import { type Beam, type Interval, type Support, within, woodAcross } from './beam-of.js';

/** What a load does to a board at one place; N, mm, MPa. */
export interface Bent {
  readonly where: string;
  readonly bending: number;
  readonly shear: number;
  readonly at: Vec3;
}

/** Elasticity without the shear of the test piece, over the published: Wood Handbook, FPL-GTR-282 (2021), p. 5–2. */
const TRUE_ELASTICITY = 1.1;

/** Places along a span a load is put at. */
const STEPS = [1, 2, 3, 4, 5, 6, 7].map((i) => i / 8);

/** Loads on a board: at its middle, at an edge, and of a person wherever one steps; N. */
export interface On {
  readonly middle: number;
  readonly edge: number;
  readonly person: number;
}

/** A strip of the board that works under a patch, by the place of the patch. */
interface Strip {
  readonly name: string;
  readonly place: 'edge' | 'middle';
  readonly band: Interval;
  /** Wood in it, mm. */
  readonly breadth: number;
  readonly height: number;
}

/** Every place a load is tried at, the spans between supports and what reaches beyond them. */
export function bentBy(beam: Beam, load: On): readonly Bent[] {
  const { supports, length } = beam;
  const spans = supports.slice(1).flatMap((next, i) => {
    const from = supports[i]!.to;
    const long = next.from - from;
    return STEPS.flatMap((share) => {
      const x = from + share * long;
      return stripsAt(beam, x).map((strip) => {
        const size = strip.place === 'edge' ? load.edge : load.middle;
        const moment = size * long * share * (1 - share);
        return bentAt(beam, x, strip, moment, size, `${strip.name}, between its supports`);
      });
    });
  });
  const [first, last] = [supports[0], supports.at(-1)];
  const beyond = (support: Support, x: number, reach: number, name: string): readonly Bent[] =>
    reach <= 0
      ? []
      : stripsAt(beam, x).map((strip) =>
          bentAt(
            beam,
            x,
            over(strip, support, beam),
            Math.max(load.person * reach, load.edge * patchLever(reach)),
            load.edge,
            `${strip.name}, beyond its ${name} support`,
          ),
        );
  return [
    ...spans,
    ...(first ? beyond(first, first.from, first.from - length.from, 'first') : []),
    ...(last ? beyond(last, last.to, length.to - last.to, 'last') : []),
  ];
}

/** How far beyond the support the middle of a patch on the very end presses, for all of its load; mm. */
const patchLever = (reach: number): number =>
  reach >= FOOT_PATCH ? reach - FOOT_PATCH / 2 : reach ** 2 / (2 * FOOT_PATCH);

/** The longest way a board gives under a person's weight, and the span it is on; mm. */
export function givesBy(
  beam: Beam,
  force: number,
  elasticity: number,
): { readonly by: number; readonly span: number } | undefined {
  const modulus = TRUE_ELASTICITY * elasticity;
  const found = beam.supports.slice(1).flatMap((next, i) => {
    const from = beam.supports[i]!.to;
    const span = next.from - from;
    return span <= 0
      ? []
      : stripsAt(beam, from + span / 2).map((strip) => ({
          span,
          by:
            borneBy(beam, strip) *
            deflection(
              force,
              span,
              strip,
              'point in the middle, simple ends',
              modulus,
              modulus * SHEAR_MODULUS_SHARE,
            ).total,
        }));
  });
  return found.toSorted((a, b) => b.by / b.span - a.by / a.span)[0];
}

/** Part of a load a strip bears by itself, and not the boards that run along below it: as stiff as each is. */
function borneBy({ along }: Beam, strip: Strip): number {
  const own = inertiaOf(strip);
  const below = along
    .filter(({ across }) => within([across], strip.band) > 0)
    .reduce((sum, { inertia }) => sum + inertia, 0);
  return own / (own + below);
}

function bentAt(beam: Beam, x: number, strip: Strip, moment: number, force: number, where: string): Bent {
  const { band, breadth, height } = strip;
  const { placed } = beam;
  const section = { breadth, height };
  return {
    where,
    bending: (borneBy(beam, strip) * moment) / modulusOf(section),
    shear: shearStress(force, section),
    at: pointOut(placed.place, [x, (band.from + band.to) / 2, placed.board.blank.thickness / 2]),
  };
}

/** The strips that work at a place along the grain: along both edges and in the middle; a board on edge works as a whole. */
function stripsAt(beam: Beam, x: number): readonly Strip[] {
  const { placed, lies } = beam;
  const { width, thickness } = placed.board.blank;
  if (!lies)
    return [
      { name: 'on top', place: 'middle', band: { from: 0, to: width }, breadth: thickness, height: width },
    ];
  const wood = woodAcross(beam, x);
  const [low, high] = [wood[0]!.from, wood.at(-1)!.to];
  const middle = (low + high) / 2;
  const half = workingBreadth(high - low, 'middle') / 2;
  const edge = workingBreadth(high - low, 'edge');
  const strip = (name: string, place: Strip['place'], band: Interval): Strip => ({
    name,
    place,
    band,
    breadth: Math.max(within(wood, band), 1),
    height: thickness,
  });
  return [
    strip('at an edge', 'edge', { from: low, to: low + edge }),
    strip('at an edge', 'edge', { from: high - edge, to: high }),
    strip('in the middle', 'middle', { from: middle - half, to: middle + half }),
  ];
}

/** A strip less the mortises of the board over its support, as a section of the same height that bends as much. */
function over(strip: Strip, { rests }: Support, { lies }: Beam): Strip {
  if (!lies) return strip;
  const { breadth, height, band } = strip;
  const lost = rests
    .flatMap(({ mortises }) => mortises)
    .reduce(
      (sum, mortise) => sum + within([acrossOf(mortise)], band) * (1 - (1 - mortise.depth / height) ** 2),
      0,
    );
  return { ...strip, breadth: Math.max(breadth - lost, 1) };
}

/** What a mortise takes of a board's width. */
function acrossOf({ at, length, width }: Mortise): Interval {
  const half = (Math.abs(at.x[1]) * length + Math.abs(at.y[1]) * width) / 2;
  return { from: at.origin[1] - half, to: at.origin[1] + half };
}
