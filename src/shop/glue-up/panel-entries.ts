import type { Design } from '../../assembly/index.js';
import { dot, frameOut, pointIn, pointOut, scale, type Vec3 } from '../../frame/index.js';
import type { Joint } from '../../joinery/index.js';
import { SAME_POINT } from '../../tolerances.js';
import type { Entry, InGroove, JointFreedom } from './entry.js';

/** The grooves of every panel, as what is closed with the joints; nothing is glued there. */
export function panelEntries(design: Design): readonly Entry[] {
  const placed = new Map(design.boards.map((one) => [one.board.id, one]));
  return (design.captives ?? []).flatMap(({ panel: id, grooves, fit }) => {
    const panel = placed.get(id)!;
    const { length, width, thickness } = panel.board.blank;
    const corners = [0, length].flatMap((x) =>
      [0, width].flatMap((y) => [0, thickness].map((z) => pointOut(panel.place, [x, y, z]))),
    );
    return grooves.map(({ board, groove: name }): Entry => {
      const holder = placed.get(board)!;
      const { at, length: run } = holder.board.grooves.find((one) => one.id === name)!;
      const groove = frameOut(holder.place, at);
      const seen = corners.map((corner) => pointIn(groove, corner));
      const along = seen.map(([x]) => x);
      const inside = Math.min(run / 2, Math.max(...along)) - Math.max(-run / 2, Math.min(...along));
      const seat: Joint = {
        id: `${id} in ${board}`,
        a: id,
        b: board,
        seat: groove,
        contactAreaMm2: 0,
        shoulder: { length: 0, width: 0 },
        cutter: 0,
        fit: { cheek: fit / 2, edge: 0, end: 0 },
        endInset: 0,
        web: 0,
        thinner: thickness,
        tenons: [],
      };
      return {
        joint: seat,
        owner: id,
        receiver: board,
        axis: scale(groove.z, -1),
        engaged: -Math.min(...seen.map(([, , z]) => z)),
        springs: [],
        inGroove: { groove, run: Math.max(inside, 0), air: fit / 2 },
      };
    });
  });
}

/** How a panel travels towards the board whose groove it sits in: along the groove or into it, never through its walls or floor. */
export function freedomInGroove(
  { joint, engaged, inGroove: { groove, air } }: Entry & { readonly inGroove: InGroove },
  travel: Vec3,
): JointFreedom {
  const deeper = -dot(travel, groove.z);
  const aside = Math.abs(dot(travel, groove.y));
  const shift =
    aside < SAME_POINT ? 0 : deeper > SAME_POINT ? (engaged * aside) / deeper : Number.POSITIVE_INFINITY;
  const shut = deeper < -SAME_POINT || shift > air;
  return {
    joint: joint.id,
    freedom: shut ? 'locked' : 'free',
    leanDeg: 0,
    shift: 0,
    push: [0, 0, 0],
    excess: shut ? Number.POSITIVE_INFINITY : 0,
    forceN: 0,
  };
}

/** How far a panel travels from where it is quite out of a groove, mm. */
export function wayInGroove(
  { engaged, inGroove: { groove, run } }: Entry & { readonly inGroove: InGroove },
  travel: Vec3,
): number {
  const deeper = Math.abs(dot(travel, groove.z));
  const along = Math.abs(dot(travel, groove.x));
  return Math.min(
    deeper > SAME_POINT ? engaged / deeper : Number.POSITIVE_INFINITY,
    along > SAME_POINT ? run / along : Number.POSITIVE_INFINITY,
  );
}
