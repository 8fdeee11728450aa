import { PRACTICE, tenonShare } from '../../joinery/index.js';
import type { TenonFigures } from '../../solid/index.js';
import { SIZED_TO_LIMIT } from '../../tolerances.js';
import type { FigureBench } from '../bench/index.js';
import { COMMON_PRACTICE, FINDING_KINDS, type Finding, MEASURED } from '../finding/index.js';

/** Tenon thickness as a share of the thinner board: round the third, from a quarter to a half. */
const THINNEST_SHARE = 1 / 4;
const THICKEST_SHARE = 1 / 2;

/** Tenons that are mitred where they meet run on past the middle of a leg; common practice, no source. */
const MITRED_SHARE = 2 / 3;

const WIDE_FACES: ReadonlySet<string> = new Set(['reference-face', 'opposite-face']);

/** A mortise enters a wide face no deeper than half the board. */
export const mortiseDepth = (bench: FigureBench): readonly Finding[] =>
  bench.tenons.flatMap((t) =>
    t.mortises.flatMap((m): Finding[] => {
      const mitred = (m.board === t.joint.a ? t.tenon.mitreA : t.tenon.mitreB) !== undefined;
      const limit = m.boardDepth * (mitred ? MITRED_SHARE : PRACTICE.faceDepthShare);
      if (!WIDE_FACES.has(m.mortise.face) || m.depth <= limit + SIZED_TO_LIMIT) return [];
      const { say } = bench;
      const [deep, most] = say.lengths(m.depth, limit);
      return [
        {
          code: 'mortise-deep',
          level: 'warning',
          subjects: [t.tenon.id, m.board],
          measured: m.depth,
          limit,
          unit: 'mm',
          message: `the mortise for tenon ${t.tenon.id} goes ${deep} into the face of ${m.board}, which is ${say.length(m.boardDepth)} thick; ${mitred ? 'two thirds' : 'half'}, ${most}, is the usual limit`,
          remedy: 'cut the mortise shallower, or make the board thicker',
          basis: COMMON_PRACTICE,
        },
      ];
    }),
  );

/** Wood stays between a mortise's ends and the edge of the board, and the next mortise: as much as its joint was asked to keep. */
export const endInset = (bench: FigureBench): readonly Finding[] =>
  bench.tenons.flatMap((t) =>
    t.mortises.flatMap((m) => [
      ...short(bench, t, m.board, {
        code: 'end-inset',
        wood: m.endWood,
        limit: t.joint.endInset,
        usual: PRACTICE.endInset,
        to: 'the edge',
      }),
      ...short(bench, t, m.board, {
        code: 'web-thin',
        wood: m.webWood,
        limit: t.joint.web,
        usual: PRACTICE.web,
        to: 'the next mortise',
      }),
    ]),
  );

interface Kept {
  readonly code: 'end-inset' | 'web-thin';
  readonly wood: number;
  readonly limit: number;
  readonly usual: number;
  readonly to: string;
}

function short({ say }: FigureBench, t: TenonFigures, board: string, kept: Kept): Finding[] {
  const { code, wood, limit, usual, to } = kept;
  if (wood >= limit - SIZED_TO_LIMIT) return [];
  const asked = limit !== usual;
  const [left, least] = say.lengths(wood, limit);
  return [
    {
      code,
      level: 'warning',
      subjects: [t.tenon.id, board],
      measured: wood,
      limit,
      unit: 'mm',
      message: `the mortise for tenon ${t.tenon.id} in ${board} leaves ${left} of wood between its end and ${to}; ${asked ? `you asked for ${least}` : `${least} is usual`}`,
      remedy: 'use narrower or fewer tenons, or a wider board',
      basis: asked ? MEASURED : COMMON_PRACTICE,
    },
  ];
}

/** A tenon is near one third of the thinner board. */
export const tenonThickness = (bench: FigureBench): readonly Finding[] =>
  bench.tenons.flatMap((t): Finding[] => {
    const thinner = Math.min(
      ...[t.joint.a, t.joint.b].map((id) => bench.solids.boards.get(id)!.board.blank.thickness),
    );
    // two rows share the wood
    const share = tenonShare(t.joint.rows ?? 1) / PRACTICE.tenonShare;
    const thin = t.thickness < THINNEST_SHARE * share * thinner - SIZED_TO_LIMIT;
    if (!thin && t.thickness <= THICKEST_SHARE * share * thinner + SIZED_TO_LIMIT) return [];
    const { say } = bench;
    const limit = (thin ? THINNEST_SHARE : THICKEST_SHARE) * share * thinner;
    const [thick, bound] = say.lengths(t.thickness, limit);
    return [
      {
        code: thin ? 'tenon-thin' : 'tenon-thick',
        level: 'warning',
        subjects: [t.tenon.id],
        measured: t.thickness,
        limit,
        unit: 'mm',
        message: `tenon ${t.tenon.id} is ${thick} thick in a board ${say.length(thinner)} thick; about ${t.joint.rows === 2 ? 'a fifth, in two rows,' : 'a third'} is best, ${thin ? 'at least' : 'at most'} ${bound} is usual`,
        remedy: thin ? 'use a wider cutter' : 'use a thinner cutter or thicker boards',
        basis: FINDING_KINDS['tenon-thin'].basis,
      },
    ];
  });
