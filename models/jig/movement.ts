import type { Hardware, PlacedBoard, Pose, Reach } from '../../src/assembly/index.js';
import type { Vec3 } from '../../src/frame/index.js';
import type { JigValues } from './jig-values.js';
import type { Layout } from './layout.js';
import { SIDES } from './rails.js';

const NARROWEST = 'narrowest work';
const WIDEST = 'widest work';

/** Each rail moves with its bolts, washers and knobs, both rails by the same amount. */
export function poses(
  l: Layout,
  rails: readonly PlacedBoard[],
  fixings: readonly (readonly Hardware[])[],
): readonly Pose[] {
  const at = (name: string, gap: number): Pose => ({
    name,
    shift: Object.fromEntries(
      SIDES.flatMap((side, i) => {
        const away = side === 'near' ? -1 : 1;
        const by: Vec3 = [0, (away * (gap - l.drawn)) / 2, 0];
        return [rails[i]!.board.id, ...fixings[i]!.map((piece) => piece.id)].map((id) => [id, by] as const);
      }),
    ),
  });
  return [at(NARROWEST, l.narrowest), at(WIDEST, l.widest)];
}

/** The gap between the rails must come down to the thinnest work and open to the thickest. */
export const reaches = (v: JigValues): readonly Reach[] => [
  {
    a: 'near-rail',
    b: 'far-rail',
    pose: NARROWEST,
    wanted: v.workMin,
    sense: 'at most',
    what: 'thinnest work the rails close on',
    remedy: 'use smaller knobs or wider rails, which let the knobs come closer, or ask for a smaller range',
  },
  {
    a: 'near-rail',
    b: 'far-rail',
    pose: WIDEST,
    wanted: v.workMax,
    sense: 'at least',
    what: 'thickest work the rails open to',
    remedy: 'lengthen the slots or ask for a smaller range',
  },
];
