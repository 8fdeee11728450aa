import type { Design } from '../../assembly/index.js';
import type { LaidIn } from '../holding/index.js';

/** Mortises of mitred tenons run into each other: the second breaks through into the first. */
export function opensInto(group: readonly LaidIn[], design: Design): readonly string[] {
  const met = group.flatMap(({ board, holding: { mortise } }) => {
    const joint = design.joints.find(({ id }) => id === mortise.joint);
    const tenon = joint?.tenons.find(({ id }) => id === mortise.tenon);
    const mitre = joint?.a === board.id ? tenon?.mitreA : tenon?.mitreB;
    return mitre ? [`in ${board.id} into that of joint ${mitre.meets}`] : [];
  });
  if (met.length === 0) return [];
  return [
    `These mortises open into others (${[...new Set(met)].join(', ')}), where tenons meet with mitred ends. In the second of the two, take light passes where the cutter breaks through, and clear the chips out of both.`,
  ];
}
