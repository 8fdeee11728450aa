import { IN_LINE_DEG, IN_LINE_MM } from '../../tolerances.js';
import type { FigureBench } from '../bench/index.js';
import { type Finding, MEASURED } from '../finding/index.js';

/** The two mortises of a joint have one axis and run the same way. */
export const inLine = (bench: FigureBench): readonly Finding[] =>
  bench.tenons.flatMap((t): Finding[] => {
    const { say } = bench;
    // a cavity that runs into another or out of the wood has no axis of its own: the walls say what is wrong
    if (t.mortises.some((mortise) => mortise.wall === 0)) return [];
    const apart = t.offLine > IN_LINE_MM;
    if (!apart && t.offLineDeg <= IN_LINE_DEG) return [];
    const boards = `${t.joint.a} and ${t.joint.b}`;
    return [
      {
        code: 'mortises-out-of-line',
        level: 'error',
        subjects: [t.tenon.id, t.joint.a, t.joint.b],
        measured: apart ? t.offLine : t.offLineDeg,
        limit: apart ? IN_LINE_MM : IN_LINE_DEG,
        unit: apart ? 'mm' : 'deg',
        message: `the mortises for tenon ${t.tenon.id} in ${boards} are ${say.fine(t.offLine)} and ${say.angle(t.offLineDeg)} out of line`,
        remedy: 'move or turn one of them until both share one axis',
        basis: MEASURED,
      },
    ];
  });
