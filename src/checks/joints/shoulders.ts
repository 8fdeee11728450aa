import { shoulderAir } from '../../solid/index.js';
import { SHOULDER_OPEN } from '../../tolerances.js';
import type { Bench } from '../bench/index.js';
import { type Finding, MEASURED } from '../finding/index.js';

/** The two boards of a joint bear on each other round every mortise. */
export const shoulders = (bench: Bench): readonly Finding[] =>
  bench.tenons.flatMap(({ joint, tenon, mortises: [inA] }): Finding[] => {
    const { solids, say } = bench;
    const [a, b] = [solids.boards.get(joint.a)!, solids.boards.get(joint.b)!];
    const air = shoulderAir(a, b, tenon, inA);
    if (air !== undefined && air <= SHOULDER_OPEN) return [];
    return [
      {
        code: 'shoulder-open',
        level: 'error',
        subjects: [tenon.id, joint.a, joint.b],
        measured: air ?? 0,
        limit: air === undefined ? 0 : SHOULDER_OPEN,
        unit: 'mm',
        message:
          air === undefined
            ? `${joint.a} and ${joint.b} have no shoulders facing each other round tenon ${tenon.id}`
            : `the shoulders of ${joint.a} and ${joint.b} are ${say.fine(air)} apart at tenon ${tenon.id}; they must touch`,
        remedy:
          'move the boards together before you join them, or put a board between them that fills the gap',
        basis: MEASURED,
      },
    ];
  });
