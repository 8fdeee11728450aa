import { exploded } from '../../assembly/index.js';
import type { Finding } from '../../checks/index.js';
import { colourOf } from '../../drawing/index.js';
import { add, eachAxis, type Frame, pointOut, scale, type Vec3, WORLD } from '../../frame/index.js';
import { fixed, printLength, type Say } from '../../length/index.js';
import { type GlueUp, inBoth } from '../../shop/index.js';
import {
  allSolids,
  type Box,
  box,
  type FeatureEdges,
  featureEdges,
  type Solid,
  type Solids,
  type TenonMeasure,
} from '../../solid/index.js';
import { type Strength, sayFigure, tipsFirst } from '../../strength/index.js';
import { sheetNames } from '../../tables/index.js';
import type {
  PreviewBox,
  PreviewData,
  PreviewJoint,
  PreviewPiece,
  PreviewStanding,
  PreviewStep,
} from '../../viewer/index.js';
import { joinedCorners } from '../solids/index.js';
import { previewFinding } from './preview-findings.js';

/** What the page needs beyond the solids. */
export interface PreviewParts {
  readonly solids: Solids;
  readonly tenons: readonly TenonMeasure[];
  readonly findings: readonly Finding[];
  readonly glueUp: GlueUp;
  readonly revision: string;
  /** How it stands; undefined when nothing says what its surfaces are for. */
  readonly strength: Strength | undefined;
  readonly say: Say;
  /** Edges of each body by its id, when they are known already. */
  readonly edges?: ReadonlyMap<string, FeatureEdges>;
}

/** Air left beyond a drawn-out tenon, mm; for looking only. */
const AIR = 40;

/** The page's data: the same triangles as the STL, with edges, moves, measures and findings. */
export function previewData(parts: PreviewParts): PreviewData {
  const { solids, glueUp } = parts;
  const { design } = solids;
  const all = allSolids(solids);
  const apart = apartOf(solids, glueUp);
  const nameOf = (board: string) => solids.boards.get(board)!.board.name;
  return {
    title: design.title,
    revision: parts.revision,
    units: parts.say.units,
    box: wholeBox(all.map(({ body }) => box(body))),
    pieces: all.map((solid) => pieceOf(solid, parts.edges?.get(solid.id), apart.get(solid.id) ?? [0, 0, 0])),
    joints: design.joints.map((joint) => ({
      id: joint.id,
      name: `${nameOf(joint.a)} to ${nameOf(joint.b)}`,
      tenons: joint.tenons.map((tenon) => tenon.id),
      clearances: clearances(parts.tenons.filter((t) => t.joint.id === joint.id)),
    })),
    first: glueUp.seatings.map((seating) => seatingOf(solids, seating)),
    steps: glueUp.steps.map((step) => stepOf(solids, glueUp, step)),
    findings: parts.findings.map((finding) => previewFinding(parts, finding)),
    ...(parts.strength && { stands: standingOf(parts.strength, parts.say) }),
    cautions: [
      ...design.notes,
      'Wear eye, ear and dust protection; secure the work; unplug the router before you change a cutter; no climb cuts by hand.',
    ],
  };
}

/** Length of the arrow where it tips first, mm. */
const ARROW = 70;

function standingOf(strength: Strength, say: Say): PreviewStanding {
  const { feet, floor } = strength.asked.resting;
  const line = feet.map(([x, y]): Vec3 => [x, y, floor]);
  const first = tipsFirst(strength);
  if (!first) return { feet: line };
  const { at, out, margin } = first;
  const { figure, unit } = margin;
  return {
    feet: line,
    first: {
      at,
      to: add(at, [ARROW * out[0], ARROW * out[1], 0]),
      text: `it tips first here, at ${sayFigure(say, figure, unit)}`,
    },
  };
}

/** A box along three axes from its corner, its sides told in both units. */
function toldBox(
  place: Frame,
  from: Vec3,
  sizes: Vec3,
  names: readonly [string, string, string],
): PreviewBox {
  const side = (i: 0 | 1 | 2, along: Vec3) => ({
    name: names[i],
    mm: sizes[i],
    along,
    mmText: printLength(sizes[i], { units: 'mm' }),
    inchText: printLength(sizes[i], { units: 'in' }),
  });
  return {
    corner: pointOut(place, from),
    sides: [side(0, place.x), side(1, place.y), side(2, place.z)],
  };
}

function wholeBox(boxes: readonly Box[]): PreviewBox {
  const min = eachAxis((i) => Math.min(...boxes.map((one) => one.min[i])));
  const sizes = eachAxis((i) => Math.max(...boxes.map((one) => one.max[i])) - min[i]);
  return toldBox(WORLD, min, sizes, ['width', 'depth', 'height']);
}

function pieceOf(solid: Solid, known: FeatureEdges | undefined, apart: Vec3): PreviewPiece {
  const seen = known ?? featureEdges(solid.body);
  const { corner, triangles } = joinedCorners(seen.positions, seen.triangles);
  const ends: number[] = [];
  seen.sharp.forEach((sharp, e) => {
    const [from, to] = [corner[seen.edges[4 * e]!]!, corner[seen.edges[4 * e + 1]!]!];
    if (sharp && from !== to) ends.push(from, to);
  });
  const wide = seen.positions.length / 3 > SHORT_NUMBERS;
  const numbers = (of: ArrayLike<number>) => base64(wide ? Uint32Array.from(of) : Uint16Array.from(of));
  return {
    id: solid.id,
    ...wordsOf(solid),
    colour: colourOf(solid),
    positions: base64(Float32Array.from(seen.positions)),
    triangles: numbers(triangles),
    edges: numbers(ends),
    wide,
    apart,
  };
}

/** Corners that two bytes can number. */
const SHORT_NUMBERS = 0x1_0000;

function wordsOf(solid: Solid): Pick<PreviewPiece, 'name' | 'role' | 'note' | 'box' | 'grain'> {
  if (solid.kind === 'board') {
    const { thickness, width, length } = solid.board.blank;
    return {
      name: solid.board.name,
      role: 'board',
      note: solid.board.material,
      ...(!sheetNames.includes(solid.board.material) && { grain: true as const }),
      box: toldBox(solid.place, [0, 0, 0], [length, width, thickness], ['length', 'width', 'thickness']),
    };
  }
  if (solid.kind === 'tenon') {
    const { place, thickness, width, length, intoA, mitreA, mitreB } = solid.tenon;
    const corner: Vec3 = [-width / 2, -thickness / 2, -intoA];
    return {
      name: `tenon ${solid.id}`,
      role: 'tenon',
      note: mitreA || mitreB ? 'loose tenon, end mitred' : 'loose tenon',
      box: toldBox(place, corner, [width, thickness, length], ['width', 'thickness', 'length']),
    };
  }
  const { name, bought } = solid.hardware;
  return { name, role: 'hardware', note: bought ? '' : 'your own' };
}

/** Pieces leave along the moves they come together by; what no move brings goes where the exploded view has it. */
function apartOf(solids: Solids, glueUp: GlueUp): ReadonlyMap<string, Vec3> {
  const { design } = solids;
  const drawn = exploded(design);
  if (glueUp.steps.length === 0 || glueUp.conflicts.length > 0) return drawn;
  const shifts = new Map<string, Vec3>(drawn);
  for (const { board } of design.boards) {
    const moves = glueUp.steps.filter((step) => step.moving.includes(board.id));
    shifts.set(
      board.id,
      moves.reduce<Vec3>(
        (sum, { direction, travel }) => add(sum, scale(direction, -(travel + AIR))),
        [0, 0, 0],
      ),
    );
  }
  for (const joint of design.joints) {
    const middle = scale(add(shifts.get(joint.a)!, shifts.get(joint.b)!), 1 / 2);
    for (const tenon of joint.tenons) shifts.set(tenon.id, middle);
  }
  return shifts;
}

/** Tenons come from where their other board will be. */
function seatingOf(
  { boards, tenons: bodies }: Solids,
  { tenons, board, receiver, standsOut }: GlueUp['seatings'][number],
): PreviewStep {
  const { tenon, joint } = bodies.get(tenons[0]!)!;
  const intoA = joint.a === board;
  const nameOf = (id: string) => boards.get(id)!.board.name;
  const many = `${tenons.length} ${tenons.length === 1 ? 'tenon' : 'tenons'}`;
  return {
    text: `${many} for ${nameOf(receiver)} into ${nameOf(board)}, standing ${inBoth(standsOut)} proud`,
    moving: tenons,
    still: [board],
    direction: scale(tenon.place.z, intoA ? -1 : 1),
    travel: intoA ? tenon.intoA : tenon.intoB,
  };
}

function stepOf(solids: Solids, glueUp: GlueUp, step: GlueUp['steps'][number]): PreviewStep {
  const names = (boards: readonly string[]) =>
    boards.map((id) => solids.boards.get(id)!.board.name).join(' with ');
  const withTenons = (boards: readonly string[]) => [
    ...boards,
    ...glueUp.seatings.filter(({ board }) => boards.includes(board)).flatMap(({ tenons }) => tenons),
  ];
  const hard = step.freedom === 'sprung' ? `; spring it by ${fixed(step.shift, 2)} mm` : '';
  return {
    text: `bring ${names(step.moving)} to ${names(step.still)}, the last ${inBoth(step.travel)}${hard}`,
    moving: withTenons(step.moving),
    still: withTenons(step.still),
    direction: step.direction,
    travel: step.travel,
  };
}

/** The least of each that was measured on a joint's tenons. */
function clearances(measures: readonly TenonMeasure[]): PreviewJoint['clearances'] {
  const mortises = measures.flatMap((tenon) => tenon.mortises);
  if (mortises.length === 0) return [];
  const least = (pick: (mortise: (typeof mortises)[number]) => number): string =>
    `${fixed(Math.min(...mortises.map(pick)), 2)} mm`;
  return [
    { name: 'at the cheeks', text: least(({ cheekClearance }) => cheekClearance) },
    { name: 'at the bottom', text: least(({ bottomClearance }) => bottomClearance) },
    { name: 'thinnest wall', text: least(({ wall }) => wall) },
  ];
}

/** More arguments than this at once overflow the stack of some engines. */
const AT_ONCE = 0x8000;

function base64(numbers: Float32Array | Uint32Array | Uint16Array): string {
  const bytes = new Uint8Array(numbers.buffer, numbers.byteOffset, numbers.byteLength);
  const letters: string[] = [];
  for (let at = 0; at < bytes.length; at += AT_ONCE)
    letters.push(String.fromCharCode(...bytes.subarray(at, at + AT_ONCE)));
  return btoa(letters.join(''));
}
