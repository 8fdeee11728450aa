import type { Finding } from '../../checks/index.js';
import { colourOf } from '../../drawing/index.js';
import { add, eachAxis, type Frame, pointOut, type Vec3, WORLD } from '../../frame/index.js';
import { fixed, printLength, type Say } from '../../length/index.js';
import type { GlueUp } from '../../shop/index.js';
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
} from '../../viewer/index.js';
import { joinedCorners } from '../solids/index.js';
import { previewFinding } from './preview-findings.js';
import { apartBy, previewMoves } from './preview-moves.js';

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

/** The page's data: the same triangles as the STL, with edges, moves, measures and findings. */
export function previewData(parts: PreviewParts): PreviewData {
  const { solids, glueUp } = parts;
  const { design } = solids;
  const all = allSolids(solids);
  const moves = previewMoves(solids, glueUp);
  const apart = apartBy(moves, solids, glueUp);
  const nameOf = (board: string) => solids.boards.get(board)!.board.name;
  return {
    title: design.title,
    revision: parts.revision,
    units: parts.say.rule,
    box: wholeBox(all.map(({ body }) => box(body))),
    pieces: all.map((solid) => pieceOf(solid, parts.edges?.get(solid.id), apart.get(solid.id) ?? [0, 0, 0])),
    joints: design.joints.map((joint) => ({
      id: joint.id,
      name: `${nameOf(joint.a)} to ${nameOf(joint.b)}`,
      tenons: joint.tenons.map((tenon) => tenon.id),
      clearances: clearances(parts.tenons.filter((t) => t.joint.id === joint.id)),
    })),
    ...moves,
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
