import type { GaveWay } from '../../joinery/index.js';
import type { Bench } from '../bench/index.js';
import { COMMON_PRACTICE, type Finding, MEASURED } from '../finding/index.js';

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
      remedy: 'make the patch larger, or write patches: largest at the joint if one patch is enough',
      basis: MEASURED,
    }),
  );

const WORDS: Readonly<Record<GaveWay['way'], string>> = {
  move: 'the first named was moved clear',
  shorten: 'the tenons of both were shortened',
  butt: 'the tenons of the first named stop short of the others',
  stagger: 'the tenons of both take turns along the row',
  mitre: 'the tenons of both run on and are mitred where they meet, with a gap between their ends',
};

/** Joints that made way alike are told of together: the four corners of a table are one note. */
function madeWay({ solids, say }: Bench): readonly Finding[] {
  const size = (of: GaveWay['before']) => `${say.length(of.length)} long and ${say.length(of.depth)} deep`;
  const changed = ({ before, after }: GaveWay) =>
    [
      { was: say.length(before.length), is: say.length(after.length), way: 'long' },
      { was: say.length(before.depth), is: say.length(after.depth), way: 'deep' },
    ].flatMap(({ was, is, way }) => (was === is ? [] : [`${is} ${way}, not ${was}`]));
  const alike = new Map<string, (GaveWay & { readonly joint: string })[]>();
  for (const { id, gaveWay = [] } of solids.design.joints) {
    for (const gave of gaveWay) {
      const key = [gave.way, size(gave.before), size(gave.after)].join();
      alike.set(key, [...(alike.get(key) ?? []), { ...gave, joint: id }]);
    }
  }
  return [...alike.values()].map((all): Finding => {
    const { way, before, after } = all[0]!;
    const sizes = changed(all[0]!);
    const pairs = all.map(({ joint, to, board }) => [joint, to.replace(/^joint /, ''), board] as const);
    // two that made way for each other alike are told once
    const once = pairs.filter(
      ([one, other, board], i) =>
        !pairs.slice(0, i).some(([p, q, b]) => p === other && q === one && b === board),
    );
    const where = once.map(([one, other, board]) => `${one} and ${other} in ${board}`).join('; ');
    const whose = 2 * once.length === all.length ? 'their mortises' : 'the mortises of the first named';
    return {
      code: 'made-way',
      level: 'note',
      subjects: [...new Set(all.flatMap(({ joint, board }) => [joint, board]))],
      measured: after.depth,
      limit: before.depth,
      unit: 'mm',
      message: `mortises would come too near each other (${where}), so ${WORDS[way]}${sizes.length === 0 ? '' : `; ${whose} are now ${sizes.join(' and ')}`}`,
      remedy:
        'to choose for yourself, write at the joint meet: shorten, butt, stagger or mitre, or its depths',
      basis: COMMON_PRACTICE,
    };
  });
}
