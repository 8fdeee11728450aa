import type { Design } from '../assembly/index.js';
import { dot, pointOut, subtract } from '../frame/index.js';
import { falling, held, rising, type Season, seasonalMovement } from '../movement/index.js';
import { sheetNames, species, speciesNames } from '../tables/index.js';
import { type HeldBoard, heldAcross } from './held-across.js';
import { type Margin, type NotComputed, together, type Worked } from './margin.js';
import { seasonFit } from './season-fit.js';

/** Glued across the grain over more than this a board cracks or bends its frame, mm. Common practice, no source. */
const HELD_MOST = 150;
const HELD_WARNED = 80;

/** What of the stress is left after months: Wood Handbook, FPL-GTR-282 (2021), p. 5–39. */
const AFTER_MONTHS = 0.65;

/** Moisture between which published movement goes on alike, %: Wood Handbook, FPL-GTR-190 (2010), p. 13–18. */
const LINEAR = { least: 6, most: 14 } as const;

/** How the boards of a piece move with the seasons, what holds them, and the room they have. */
export function moving(design: Design, season: Season): Worked {
  const solid = design.boards.filter(({ board }) => !sheetNames.includes(board.material));
  if (solid.length === 0) return { margins: [], notComputed: [] };
  return together([
    ...heldAcross(design, season).map((one) => holding(one, season)),
    {
      margins: [
        ...seasonFit(design, season),
        ...fastened(design, season),
        ...captive(design, season),
        ...(design.joints.length > 0 ? wetGlued(season) : []),
        ...solid.map(
          ({ board, place }): Margin => ({
            code: 'no-room-to-move',
            subjects: [board.id],
            what: `what ${board.name} moves across its grain in a year`,
            figure: seasonalMovement(board.material, board.blank.width, season),
            unit: 'mm',
            better: 'less',
            remedy: 'leave it room to move',
            at: pointOut(place, [board.blank.length / 2, board.blank.width / 2, board.blank.thickness]),
          }),
        ),
      ],
      notComputed: unknowns(design, season),
    },
  ]);
}

function holding({ held: board, by, width, perPercent, at }: HeldBoard, season: Season): Worked {
  const { id, name, material } = board.board;
  const holders = by.map(({ board: one }) => one.name).join(', ');
  const about = { subjects: [id, ...by.map(({ board: one }) => one.id)], at, better: 'less' as const };
  const remedy =
    'make the glued width narrower, or hold it so that it can move: buttons, slotted screws, a groove';
  const margins: Margin[] = [
    {
      ...about,
      code: 'held-across-grain',
      what: `width of ${name} held across its grain by ${holders}`,
      figure: width,
      unit: 'mm',
      error: HELD_MOST,
      warning: HELD_WARNED,
      remedy,
    },
  ];
  if (width <= HELD_WARNED) return { margins, notComputed: [] };
  margins.push({
    ...about,
    code: 'held-across-grain',
    what: `what ${name} would move there if it were free`,
    figure: perPercent * Math.max(rising(season), falling(season)),
    unit: 'mm',
    remedy,
  });
  const cracks = speciesNames.includes(material) ? held(species(material), season.cut) : undefined;
  if (!cracks)
    return {
      margins,
      notComputed: [
        { what: `when ${name} cracks`, why: `the strength of ${material} across its grain is not published` },
      ],
    };
  margins.push({
    ...about,
    code: 'held-cracks',
    what: `moisture ${name} loses while it is held across its grain`,
    figure: falling(season),
    unit: '%',
    warning: cracks.cracksAt / AFTER_MONTHS,
    remedy,
  });
  return { margins, notComputed: [] };
}

/** Buttons and slotted screws let a board move as far as it must. */
const fastened = ({ boards, fastenings = [] }: Design, season: Season): readonly Margin[] =>
  fastenings.flatMap(({ id, held: heldId, to, at, along, travel }): Margin[] => {
    const { board, place } = boards.find((one) => one.board.id === heldId)!;
    const { length, width, thickness } = board.blank;
    const centre = pointOut(place, [length / 2, width / 2, thickness / 2]);
    const away = Math.abs(dot(subtract(at.origin, centre), along));
    return [
      {
        code: 'no-room-to-move',
        subjects: [id, heldId, to],
        what: `travel of ${board.name} at ${id}`,
        figure: travel,
        unit: 'mm',
        better: 'more',
        error: seasonalMovement(board.material, away, season),
        remedy: 'ask for more travel, or leave it out to have it worked out',
        at: at.origin,
      },
    ];
  });

/** A panel in grooves has the room it moves. */
const captive = ({ boards, captives = [] }: Design, season: Season): readonly Margin[] =>
  captives.map(({ panel, slack, grooves }): Margin => {
    const { board, place } = boards.find((one) => one.board.id === panel)!;
    return {
      code: 'no-room-to-move',
      subjects: [panel, ...grooves.map((groove) => groove.board)],
      what: `room of ${board.name} across its grain in its grooves`,
      figure: slack,
      unit: 'mm',
      better: 'more',
      error: seasonalMovement(board.material, board.blank.width, season),
      remedy: 'ask for more slack, or leave it out to have it worked out',
      at: pointOut(place, [board.blank.length / 2, board.blank.width / 2, board.blank.thickness]),
    };
  });

/** Wood is glued within the moistures it will go through. */
function wetGlued({ climate: { dryPercent, dampPercent, name }, gluedAt }: Season): readonly Margin[] {
  const wet = gluedAt > (dryPercent + dampPercent) / 2;
  return [
    {
      code: 'glued-out-of-place',
      subjects: [],
      what: `moisture of the wood when it is glued, for ${name}`,
      figure: gluedAt,
      unit: '%',
      ...(wet ? { better: 'less', warning: dampPercent } : { better: 'more', warning: dryPercent }),
      remedy: 'let the wood lie where the piece will stand until its weight stays the same',
    },
  ];
}

function unknowns(
  { boards }: Design,
  { climate: { dryPercent, dampPercent } }: Season,
): readonly NotComputed[] {
  const unpublished = [
    ...new Set(
      boards.flatMap(({ board: { material } }) =>
        speciesNames.includes(material) && species(material).movement === undefined ? [material] : [],
      ),
    ),
  ];
  return [
    {
      what: 'movement along the grain',
      why: 'reaction wood and wood from the heart of a tree move up to ten times as much along the grain as other wood, and nothing told here says which board has it',
    },
    ...unpublished.map((material) => ({
      what: `movement of ${material}`,
      why: 'it is not published: 1/400 of the width for 1 % of moisture is taken, as common practice, no source',
    })),
    ...(dryPercent < LINEAR.least || dampPercent > LINEAR.most
      ? [
          {
            what: 'movement of wood drier than 6 % or damper than 14 %',
            why: 'the published figures hold between these: they are taken to go on alike',
          },
        ]
      : []),
  ];
}
