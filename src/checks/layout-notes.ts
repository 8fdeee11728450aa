import type { GaveWay } from '../joinery/index.js';
import { COMMON_PRACTICE, MEASURED } from './basis.js';
import type { Bench } from './bench.js';
import type { Finding } from './finding.js';

/** What the layouts decided without being asked: patches without a tenon, and tenons that made way. */
export const layoutNotes = (bench: Bench): readonly Finding[] => [...patchesLeft(bench), ...madeWay(bench)];

const patchesLeft = ({ solids, say }: Bench): readonly Finding[] =>
  (solids.design.patchesLeft ?? []).map(
    ({ joint, a, b, length, width, areaMm2, why }): Finding => ({
      code: 'patch-without-tenon',
      level: 'note',
      subjects: [joint, a, b],
      measured: areaMm2,
      limit: 0,
      unit: '',
      message: `${a} and ${b} also touch on a patch ${say.length(length)} × ${say.length(width)}, and it gets no tenon: ${typeof why === 'string' ? why : why(say)}`,
      remedy: "make the patch larger, or give the joint patches: 'largest' if one patch is enough",
      basis: MEASURED,
    }),
  );

const WORDS: Readonly<Record<GaveWay['way'], string>> = {
  move: 'were moved clear',
  shorten: 'and the others were both shortened',
  butt: 'stop short of the others',
  stagger: 'take every second place, and the others the places between',
  mitre: 'and the others run on and are mitred where they meet, with a gap between their ends',
};

/** Joints that made way alike are told of together: the four corners of a table are one note. */
function madeWay({ solids, say }: Bench): readonly Finding[] {
  const size = (of: GaveWay['before']) => `${say.length(of.length)} long and ${say.length(of.depth)} deep`;
  const alike = new Map<string, (GaveWay & { readonly joint: string })[]>();
  for (const { id, gaveWay = [] } of solids.design.joints) {
    for (const gave of gaveWay) {
      const key = [gave.way, size(gave.before), size(gave.after)].join();
      alike.set(key, [...(alike.get(key) ?? []), { ...gave, joint: id }]);
    }
  }
  return [...alike.values()].map((all): Finding => {
    const { way, before, after } = all[0]!;
    const where = all.map(({ joint, to, board }) => `${joint} from ${to} in ${board}`).join('; ');
    return {
      code: 'made-way',
      level: 'note',
      subjects: [...new Set(all.flatMap(({ joint, board }) => [joint, board]))],
      measured: after.depth,
      limit: before.depth,
      unit: 'mm',
      message: `too little wood would be left between mortises (${where}), so these tenons ${WORDS[way]}; their mortises are now ${size(after)}, not ${size(before)}`,
      remedy:
        "to choose for yourself, give the joint meet: 'shorten', 'butt', 'stagger' or 'mitre', or its depths",
      basis: COMMON_PRACTICE,
    };
  });
}
