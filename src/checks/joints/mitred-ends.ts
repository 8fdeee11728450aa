import type { MitredEnd } from '../../joinery/index.js';
import { gap } from '../../solid/index.js';
import { CLEARANCE_SLACK } from '../../tolerances.js';
import type { Bench } from '../bench/index.js';
import { type Finding, MEASURED } from '../finding/index.js';

/** Mitred ends keep the gap asked for between them: a tenon that bottoms on another holds its joint open. */
export function mitredEnds({ solids, tenons, say }: Bench): readonly Finding[] {
  const seen = new Set<string>();
  return tenons.flatMap(({ joint, tenon }) =>
    [tenon.mitreA, tenon.mitreB]
      .filter((mitre): mitre is MitredEnd => mitre !== undefined)
      .flatMap((mitre) =>
        tenons
          .filter((other) => other.joint.id === mitre.meets)
          .flatMap((other): Finding[] => {
            const pair = [tenon.id, other.tenon.id].toSorted();
            if (seen.has(pair.join())) return [];
            seen.add(pair.join());
            const air = gap(
              solids.tenons.get(tenon.id)!.body,
              solids.tenons.get(other.tenon.id)!.body,
              mitre.gap,
            );
            if (air >= mitre.gap - CLEARANCE_SLACK) return [];
            const [near, least] = say.fines(air, mitre.gap);
            return [
              {
                code: 'tenons-meet',
                level: 'error',
                subjects: [...pair, joint.id, mitre.meets],
                measured: air,
                limit: mitre.gap,
                unit: 'mm',
                message: `the mitred ends of tenons ${pair.join(' and ')} come within ${near} of each other; ${least} must stay free between them`,
                remedy: 'saw their ends shorter',
                basis: MEASURED,
              },
            ];
          }),
      ),
  );
}
