import { assemble, type Design, type JoinRequest, type PlacedBoard } from '../../src/assembly/index.js';
import { block } from './blocks.js';

/**
 * An armchair of 18 boards: two side frames of two legs, a rail and an arm; a back of seven slats between two rails; a seat
 * rail. x across, y back, z up, mm.
 */
export function armchair(): Design {
  const boards: PlacedBoard[] = [];
  const joints: JoinRequest[] = [];
  const options = { cutter: 8, tenons: 1, endInset: 5 };
  const join = (a: string, b: string) => joints.push({ a, b, options });
  for (const [side, x] of [
    ['left', 0],
    ['right', 555],
  ] as const) {
    const [front, back, rail, arm] = ['front-leg', 'back-leg', 'rail', 'arm'].map((of) => `${side}-${of}`);
    boards.push(
      block(front!, [x, 0, 0], [x + 45, 45, 600], 2),
      block(back!, [x, 455, 0], [x + 45, 500, 900], 2),
      block(rail!, [x + 10, 45, 200], [x + 35, 455, 270], 1),
      block(arm!, [x - 10, -20, 600], [x + 55, 455, 630], 1),
    );
    join(rail!, front!);
    join(rail!, back!);
    join(front!, arm!);
    join(arm!, back!);
  }
  const across = [
    ['seat-rail', 'front-leg', 10, 300],
    ['low-rail', 'back-leg', 465, 330],
    ['top-rail', 'back-leg', 465, 780],
  ] as const;
  for (const [id, leg, y, z] of across) {
    boards.push(block(id, [45, y, z], [555, y + 25, z + 60], 0));
    join(id, `left-${leg}`);
    join(id, `right-${leg}`);
  }
  for (let i = 1; i <= 7; i += 1) {
    const x = 25 + 60 * i;
    boards.push(block(`slat-${i}`, [x, 470, 390], [x + 45, 485, 780], 2));
    join(`slat-${i}`, 'top-rail');
    join(`slat-${i}`, 'low-rail');
  }
  return assemble({ name: 'armchair', title: 'Armchair', cutter: 8, boards, joints });
}
