import { deflection, GRAVITY, modulusOf, TEN_YEARS_SHARE } from '../statics/index.js';
import type { Asked } from './asked.js';
import type { Beam } from './beam-of.js';
import type { Load } from './load.js';
import type { Margin, Worked } from './margin.js';
import type { UsedSurface } from './used-surface.js';
import { whyNoStrength, woodStrength } from './wood-strength.js';

/** Most a shelf may sag under its full load, and what is not noticed when it is new; shares of its span. */
const MOST_SAG = 1 / 144;
const UNSEEN_SAG = 1 / 600;

/** After several years under load the elastic sag has doubled: Wood Handbook, FPL-GTR-282 (2021), p. 5–39. */
const CREEP = 2;

/** Most load on one shelf, N: 200 lb, Architectural Woodwork Standards (2009), 1.2.21. */
const MOST_ON_SHELF = 200 * 0.45359237 * GRAVITY;

const REMEDY = 'make the shelf thicker, shorten it, or put a support below its middle';

/** How far a shelf sags under what lies on it, and whether it bears that for years. */
export function sagging({ stock }: Asked, { placed, loads }: UsedSurface, beam: Beam): Worked {
  const { board } = placed;
  const not = (why: string): Worked => ({
    margins: [],
    notComputed: [{ what: `how far ${board.name} sags`, why }],
  });
  const wood = woodStrength(board.material, stock);
  if (!wood) return not(whyNoStrength(board.material, stock));
  const span = Math.max(0, ...beam.supports.slice(1).map((next, i) => next.from - beam.supports[i]!.to));
  if (span === 0) return not('no two supports along its grain were found');
  const section = { breadth: board.blank.width, height: board.blank.thickness };
  const per = (kind: Load['kind']) => loads.find((load) => load.kind === kind)?.size ?? 0;
  const full = Math.min(per('spread') * board.blank.width * span, MOST_ON_SHELF);
  const books = per('books') * span;
  const sag = (load: number) =>
    deflection(load, span, section, 'uniform, simple ends', wood.elasticity).total;
  const about = { subjects: [board.id], better: 'less', remedy: REMEDY } as const;
  const margins: readonly Margin[] = [
    {
      ...about,
      code: 'shelf-sags',
      what: `sag of ${board.name} under its full load`,
      figure: sag(full),
      unit: 'mm',
      error: span * MOST_SAG,
    },
    {
      ...about,
      code: 'shelf-sags',
      what: `sag of ${board.name} under a row of books, when new`,
      figure: sag(books),
      unit: 'mm',
      warning: span * UNSEEN_SAG,
    },
    {
      ...about,
      code: 'shelf-sags',
      what: `sag of ${board.name} under a row of books, after some years`,
      figure: CREEP * sag(books),
      unit: 'mm',
    },
    {
      ...about,
      code: 'board-breaks',
      what: `bending stress in ${board.name} under its full load, for years`,
      figure: (full * span) / 8 / modulusOf(section),
      unit: 'MPa',
      error: TEN_YEARS_SHARE * wood.bending.five,
      warning: TEN_YEARS_SHARE * wood.bending.design,
    },
  ];
  return { margins, notComputed: [] };
}
