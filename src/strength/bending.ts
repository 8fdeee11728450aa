import { pointOut, settledFigure } from '../frame/index.js';
import { FOOT_PATCH, inertiaOf } from '../statics/index.js';
import type { Asked } from './asked.js';
import { type Beam, beamOf, type Rest } from './beam-of.js';
import { type Bent, bentBy, givesBy, type On } from './bent.js';
import type { Load } from './load.js';
import { type Margin, together, type Worked } from './margin.js';
import { sagging } from './sagging.js';
import type { UsedSurface } from './used-surface.js';
import { type WoodStrength, whyNoStrength, woodStrength } from './wood-strength.js';

/** A step that gives more than this share of its span does not feel firm; our own. */
const FIRM = 1 / 200;

const REMEDY = 'make the board thicker, bring its supports nearer together, or choose a stronger wood';

/** Boards that are stood, sat or laid upon, and what carries them, in bending, shear and bearing. */
export const bending = (asked: Asked): Worked =>
  together(asked.surfaces.map((surface) => surfaceBends(asked, surface)));

function surfaceBends(asked: Asked, surface: UsedSurface): Worked {
  const { design } = asked;
  const { placed, use, loads } = surface;
  const beam = beamOf(design, placed);
  if (use === 'shelf') return sagging(asked, surface, beam);
  const size = (kind: Load['kind']) => loads.find((load) => load.kind === kind)?.size ?? 0;
  const load: On = { middle: size('proof'), edge: size('edge'), person: size('person') };
  const carried = carriers(asked, beam).map((carrier) =>
    boardBends(asked, carrier, shareOf(beam, carrier, load), 'under what it carries'),
  );
  return together([boardBends(asked, beam, load, 'under the test load', use), ...carried]);
}

/** Boards that hold this one up, have their grain level and are themselves held up. */
const carriers = ({ design }: Asked, { rests }: Beam): readonly Beam[] =>
  [...new Set(rests.map(({ by }) => by))]
    .map((by) => design.boards.find(({ board }) => board.id === by)!)
    .filter(({ place }) => Math.abs(place.x[2]) < FLAT)
    .map((placed) => beamOf(design, placed))
    .filter(({ supports }) => supports.length > 0);

/** What a board that runs along below another one bears of a load at its edge: as stiff as each is; all of it when it runs across. */
function shareOf({ along, placed }: Beam, carrier: Beam, load: On): On {
  const runs = along.find(({ id }) => id === carrier.placed.board.id);
  if (!runs) return load;
  const strip = inertiaOf({ breadth: FOOT_PATCH, height: placed.board.blank.thickness });
  const share = runs.inertia / (runs.inertia + strip);
  return { middle: share * load.middle, edge: share * load.edge, person: share * load.person };
}

/** Sine of the lean up to which a board counts as level along its grain. */
const FLAT = 0.5;

function boardBends({ stock }: Asked, beam: Beam, load: On, under: string, use?: UsedSurface['use']): Worked {
  const { placed } = beam;
  const { name, id } = placed.board;
  const wood = woodStrength(placed.board.material, stock);
  const not = (why: string): Worked => ({ margins: [], notComputed: [{ what: `what ${name} bears`, why }] });
  if (!wood) return not(whyNoStrength(placed.board.material, stock));
  if (beam.supports.length === 0) return not('nothing that holds it up along its grain was found');
  const all = bentBy(beam, load);
  const worst = (of: (bent: Bent) => number): Bent | undefined =>
    all.reduce<Bent | undefined>(
      (most, one) => (most && settledFigure(of(one)) <= settledFigure(of(most)) ? most : one),
      undefined,
    );
  const stress = (
    code: 'board-breaks' | 'board-shears',
    what: string,
    of: (bent: Bent) => number,
    borne: WoodStrength['bending'],
  ): readonly Margin[] => {
    const bent = worst(of);
    if (!bent) return [];
    return [
      {
        code,
        subjects: [id],
        what: `${what} in ${name} ${under}`,
        figure: of(bent),
        unit: 'MPa',
        better: 'less',
        error: borne.five,
        warning: borne.design,
        governs: bent.where,
        remedy: REMEDY,
        at: bent.at,
      },
    ];
  };
  const firm = use === 'step' || use === 'seat';
  const margins = [
    ...stress('board-breaks', 'bending stress', ({ bending: found }) => found, wood.bending),
    ...stress('board-shears', 'shear stress', ({ shear }) => shear, wood.shear),
    ...bears(beam, load.edge, wood, under),
    ...(firm ? gives(beam, load.person, wood) : []),
  ];
  return { margins, notComputed: [] };
}

/** The whole load on one support, on as much of it as the patch covers. */
function bears(beam: Beam, force: number, { bearing }: WoodStrength, under: string): readonly Margin[] {
  const { placed } = beam;
  const pressed = beam.rests
    .filter(({ kind }) => kind === 'below')
    .map((rest) => ({ rest, stress: settledFigure(force / areaOf(rest)) }))
    .toSorted((a, b) => b.stress - a.stress)[0];
  if (!pressed) return [];
  const { rest, stress } = pressed;
  const [along, across] = [rest.along, rest.across].map(({ from, to }) => (from + to) / 2) as [
    number,
    number,
  ];
  return [
    {
      code: 'board-crushed',
      subjects: [placed.board.id, rest.by],
      what: `pressure across the grain of ${placed.board.name} ${under}`,
      figure: stress,
      unit: 'MPa',
      better: 'less',
      error: bearing.five,
      warning: bearing.design,
      governs: `where it lies on ${rest.by}`,
      remedy: 'make the support thicker or wider, or choose a harder wood',
      at: pointOut(placed.place, beam.lies ? [along, across, 0] : [along, 0, across]),
    },
  ];
}

/** What bears of a rest under a patch: as long as the patch, less its share of the mortises' mouths; mm². */
function areaOf({ along, across, mortises }: Rest): number {
  const [long, wide] = [along.to - along.from, across.to - across.from];
  const mouths = mortises.reduce((sum, { length, width }) => sum + length * width, 0);
  // along the grain or across it, the patch covers no more than its side
  const covered = Math.min(1, FOOT_PATCH / Math.max(long, wide));
  return Math.max(1, (long * wide - mouths) * covered);
}

function gives(beam: Beam, force: number, { elasticity }: WoodStrength): readonly Margin[] {
  const worst = givesBy(beam, force, elasticity);
  if (!worst) return [];
  const { board } = beam.placed;
  return [
    {
      code: 'board-gives',
      subjects: [board.id],
      what: `how far ${board.name} gives under a person at its edge`,
      figure: worst.by,
      unit: 'mm',
      better: 'less',
      warning: worst.span * FIRM,
      remedy: REMEDY,
    },
  ];
}
