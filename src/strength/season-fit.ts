import type { Design, PlacedBoard } from '../assembly/index.js';
import { dot, settledFigure } from '../frame/index.js';
import { type Joint, SWELL_SPARE } from '../joinery/index.js';
import { falling, movedBy, rising, type Season, strainOf } from '../movement/index.js';
import { PARALLEL_DEG } from '../tolerances.js';
import type { Margin } from './margin.js';

/** Air a tenon wants at its end, so that it never meets the bottom, mm. Common practice, no source. */
const END_AIR = 0.5;

/** A shoulder open wider than this shows and no longer presses, mm. Our own. */
const SHOWS = 0.5;

/** Cosine between the grains of boards that are glued edge to edge. */
const ALONG = Math.cos((PARALLEL_DEG * Math.PI) / 180);

/** What the seasons do to the fit of every joint: each figure at the worst of its tenons and sides. */
export const seasonFit = ({ boards, joints }: Design, season: Season): readonly Margin[] =>
  joints.flatMap((joint) => {
    const sides = [joint.a, joint.b].map((id) => boards.find(({ board }) => board.id === id)!);
    // in a seam the tenons only line the boards up, and its long edges hold it
    const seam = Math.abs(dot(sides[0]!.place.x, sides[1]!.place.x)) > ALONG;
    const measured = sides.flatMap((side) => fitIn(joint, side, season));
    const worst = (figure: (of: Fitted) => number) =>
      measured.reduce((least, one) =>
        settledFigure(figure(one)) < settledFigure(figure(least)) ? one : least,
      );
    const about = { subjects: [joint.id, joint.a, joint.b], unit: 'mm' as const, at: joint.seat.origin };
    const tight = worst(({ slack, swells }) => slack - swells);
    const shallow = worst(({ gap, shrinks }) => gap - shrinks);
    const open = worst(({ shrinks }) => -shrinks);
    const margins: Margin[] = [];
    if (tight.swells > 0)
      margins.push({
        ...about,
        code: 'tenon-swells',
        what: `slack at the edges of the tenons of ${joint.id}`,
        figure: tight.slack,
        better: 'more',
        error: tight.swells,
        ...(!seam && { warning: tight.swells + SWELL_SPARE }),
        governs: tight.in.name,
        remedy: 'give the mortises more edge clearance, or make the tenons narrower',
      });
    if (shallow.shrinks > 0)
      margins.push({
        ...about,
        code: 'tenon-meets-bottom',
        what: `air at the ends of the tenons of ${joint.id}`,
        figure: shallow.gap,
        better: 'more',
        error: shallow.shrinks,
        warning: Math.max(END_AIR, shallow.shrinks),
        governs: shallow.in.name,
        remedy: 'leave a larger end gap',
      });
    if (open.shrinks > 0)
      margins.push({
        ...about,
        code: 'shoulder-opens',
        what: `how far the shoulder of ${joint.id} opens when the wood is driest`,
        figure: open.shrinks,
        better: 'less',
        warning: SHOWS,
        governs: open.in.name,
        remedy: 'make the mortise shallower, or glue wood that is drier',
      });
    return margins;
  });

interface Fitted {
  readonly in: PlacedBoard['board'];
  /** Mortise length less tenon width, and what the tenon grows more than the mortise when the wood is dampest. */
  readonly slack: number;
  readonly swells: number;
  /** Air at the tenon's end, and what the mortise loses of its depth when the wood is driest. */
  readonly gap: number;
  readonly shrinks: number;
}

/** The tenons of a joint in one of its boards; of a wood nobody told they are taken not to grow. */
function fitIn(joint: Joint, side: PlacedBoard, season: Season): readonly Fitted[] {
  const { board, place } = side;
  const strain = strainOf(board.material, season.cut);
  const grows = joint.tenonWood === undefined ? 0 : strainOf(joint.tenonWood, season.cut).width;
  return joint.tenons.flatMap((tenon): Fitted[] => {
    const mortise = board.mortises.find((one) => one.tenon === tenon.id);
    if (!mortise) return [];
    const { x, z } = tenon.place;
    const along = dot(movedBy(strain, place, x), x);
    const into = board.id === joint.a ? tenon.intoA : tenon.intoB;
    return [
      {
        in: board,
        slack: mortise.length - tenon.width,
        swells: tenon.width * (grows - along) * rising(season),
        gap: mortise.depth - into,
        shrinks: mortise.depth * dot(movedBy(strain, place, z), z) * falling(season),
      },
    ];
  });
}
