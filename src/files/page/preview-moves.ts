import { exploded } from '../../assembly/index.js';
import { add, dot, scale, type Vec3 } from '../../frame/index.js';
import { fixed } from '../../length/index.js';
import { type GlueUp, inBoth } from '../../shop/index.js';
import type { Solids } from '../../solid/index.js';
import type { PreviewData, PreviewStep } from '../../viewer/index.js';

/** Air left where a tenon leaves its mortise, mm; for looking only. */
const AIR = 15;

type Moves = Pick<PreviewData, 'first' | 'steps'>;

/** The moves a piece is put together by: tenons into their boards, then boards together. */
export function previewMoves(solids: Solids, glueUp: GlueUp): Moves {
  const first = glueUp.seatings.map((seating) => seatingOf(solids, seating));
  // boards stand so far apart that the longest tenon comes out between them
  const between = AIR + Math.max(0, ...first.map(({ back }) => back));
  const shifts = new Map<string, Vec3>();
  const steps = glueUp.steps.map((step): PreviewStep => {
    const away = scale(step.direction, -1);
    const shift = (board: string): Vec3 => shifts.get(board) ?? [0, 0, 0];
    const along = (board: string): number => dot(shift(board), away);
    // what stands apart already needs its own room between
    const room = Math.max(...step.still.map(along)) - Math.min(...step.moving.map(along));
    const back = step.travel + between + Math.max(0, room);
    for (const board of step.moving) shifts.set(board, add(shift(board), scale(away, back)));
    return stepOf(solids, glueUp, step, back);
  });
  return { first, steps };
}

/** Pieces leave along the moves they come together by; what no move brings goes where the exploded view has it. */
export function apartBy(
  { steps }: Moves,
  { design }: Solids,
  { conflicts }: GlueUp,
): ReadonlyMap<string, Vec3> {
  const drawn = exploded(design);
  if (steps.length === 0 || conflicts.length > 0) return drawn;
  const shifts = new Map<string, Vec3>(drawn);
  for (const { board } of design.boards) {
    const moves = steps.filter(({ moving }) => moving.includes(board.id));
    shifts.set(
      board.id,
      moves.reduce<Vec3>((sum, { direction, back }) => add(sum, scale(direction, -back)), [0, 0, 0]),
    );
  }
  for (const joint of design.joints) {
    const middle = scale(add(shifts.get(joint.a)!, shifts.get(joint.b)!), 1 / 2);
    for (const tenon of joint.tenons) shifts.set(tenon.id, middle);
  }
  return shifts;
}

/** Tenons come from where their other board will be. */
function seatingOf(
  { boards, tenons: bodies }: Solids,
  { tenons, board, receiver, standsOut }: GlueUp['seatings'][number],
): PreviewStep {
  const { tenon, joint } = bodies.get(tenons[0]!)!;
  const intoA = joint.a === board;
  const nameOf = (id: string) => boards.get(id)!.board.name;
  const many = `${tenons.length} ${tenons.length === 1 ? 'tenon' : 'tenons'}`;
  return {
    text: `${many} for ${nameOf(receiver)} into ${nameOf(board)}, standing ${inBoth(standsOut)} proud`,
    moving: tenons,
    direction: scale(tenon.place.z, intoA ? -1 : 1),
    back: AIR + (intoA ? tenon.intoA : tenon.intoB),
  };
}

function stepOf(
  solids: Solids,
  { seatings }: GlueUp,
  { moving, still, travel, direction, freedom, shift }: GlueUp['steps'][number],
  back: number,
): PreviewStep {
  const names = (boards: readonly string[]) =>
    boards.map((id) => solids.boards.get(id)!.board.name).join(' with ');
  const hard = freedom === 'sprung' ? `; spring it by ${fixed(shift, 2)} mm` : '';
  return {
    text: `bring ${names(moving)} to ${names(still)}, the last ${inBoth(travel)}${hard}`,
    moving: [
      ...moving,
      ...seatings.filter(({ board }) => moving.includes(board)).flatMap(({ tenons }) => tenons),
    ],
    direction,
    back,
  };
}
