import type { MortiseFigures, TenonFigures } from '../../solid/index.js';
import { CLEARANCE_SLACK, FIT_ROUNDING } from '../../tolerances.js';
import type { FigureBench } from '../bench/index.js';
import { COMMON_PRACTICE, type Finding, MEASURED } from '../finding/index.js';

/**
 * Loosest cheek that still makes a sound glue line: 0.15 mm bond line (Wengert, via a trade magazine) and as much again
 * for the cutter's run-out (common practice, no source), mm.
 */
const LOOSEST_CHEEK = 0.25;

/** Least difference between mortise length and tenon width that lets glue and air pass, mm. */
const LEAST_EDGE = 0.5;

/** A tenon clears the bottoms and cheeks of both its mortises by the fit asked for, and is narrower than they are long. */
export const tenonFit = (bench: FigureBench): readonly Finding[] =>
  bench.tenons.flatMap((tenon) => [
    ...bottoms(bench, tenon),
    ...tenon.mortises.flatMap((mortise) => [
      ...cheeks(bench, tenon, mortise),
      ...narrower(bench, tenon, mortise),
    ]),
  ]);

function bottoms(bench: FigureBench, t: TenonFigures): Finding[] {
  const { say } = bench;
  const [a, b] = t.mortises;
  const short = t.mortises.filter((m) => m.bottomClearance < t.joint.fit.end - CLEARANCE_SLACK);
  if (short.length === 0) return [];
  const together = a.depth + b.depth;
  const worst = Math.min(a.bottomClearance, b.bottomClearance);
  const excess = Math.max(t.length + 2 * t.joint.fit.end - together, t.joint.fit.end - worst);
  const [long, deep] = say.lengths(t.length, together);
  const [stops, needed, shorter] = say.fines(worst, t.joint.fit.end, excess);
  return [
    {
      code: worst <= 0 ? 'tenon-bottoms-out' : 'tenon-end-gap',
      level: 'error',
      subjects: [t.tenon.id, ...short.map((m) => m.board)],
      measured: worst,
      limit: t.joint.fit.end,
      unit: 'mm',
      message: `tenon ${t.tenon.id} is ${long} long and its two mortises together are ${deep} deep: it stops ${stops} from the bottom in ${short.map((m) => m.board).join(' and ')}, where ${needed} must stay free`,
      remedy: `shorten the tenon by ${shorter}, or cut a mortise as much deeper`,
      basis: MEASURED,
    },
  ];
}

function cheeks(bench: FigureBench, t: TenonFigures, m: MortiseFigures): Finding[] {
  const { say } = bench;
  const asked = t.joint.fit.cheek;
  const shared = { subjects: [t.tenon.id, m.board], measured: m.cheekClearance, unit: 'mm' as const };
  if (m.cheekClearance < asked - CLEARANCE_SLACK || (m.cheekClearance <= 0 && asked > 0)) {
    const [air, wanted, thinner] = say.fines(m.cheekClearance, asked, asked - m.cheekClearance);
    return [
      {
        ...shared,
        code: 'tenon-too-tight',
        level: 'error',
        limit: asked,
        message: `tenon ${t.tenon.id} has ${air} of clearance at its cheeks in ${m.board}; you asked for ${wanted}`,
        remedy: `plane ${thinner} off each cheek of the tenon, or use a wider cutter`,
        basis: MEASURED,
      },
    ];
  }
  if (m.cheekClearance <= LOOSEST_CHEEK + FIT_ROUNDING) return [];
  const [air, loosest] = say.fines(m.cheekClearance, LOOSEST_CHEEK);
  return [
    {
      ...shared,
      code: 'tenon-loose',
      level: 'warning',
      limit: LOOSEST_CHEEK,
      message: `tenon ${t.tenon.id} has ${air} of clearance at its cheeks in ${m.board}; glue bridges ${loosest} at most`,
      remedy: 'make the tenon thicker, or ask for less cheek clearance',
      basis: COMMON_PRACTICE,
    },
  ];
}

function narrower(bench: FigureBench, t: TenonFigures, m: MortiseFigures): Finding[] {
  const { say } = bench;
  const spare = m.length - t.width;
  if (spare >= LEAST_EDGE - FIT_ROUNDING) return [];
  const [wide, long] = say.lengths(t.width, m.length);
  const [left, needed] = say.fines(spare, LEAST_EDGE);
  return [
    {
      code: 'tenon-edge-gap',
      level: spare <= FIT_ROUNDING ? 'error' : 'warning',
      subjects: [t.tenon.id, m.board],
      measured: spare,
      limit: LEAST_EDGE,
      unit: 'mm',
      message: `tenon ${t.tenon.id} is ${wide} wide and its mortise in ${m.board} ${long} long: that leaves ${left} for glue and air to pass, and at least ${needed} is needed`,
      remedy: 'make the tenon narrower, or the mortise longer',
      basis: COMMON_PRACTICE,
    },
  ];
}
