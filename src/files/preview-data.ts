import { exploded } from '../assembly/index.js';
import type { Finding } from '../checks/index.js';
import { colourOf } from '../drawing/index.js';
import { add, scale, type Vec3 } from '../frame/index.js';
import type { GlueUp } from '../shop/index.js';
import {
  allSolids,
  box,
  type FeatureEdges,
  featureEdges,
  type Solid,
  type Solids,
  type TenonMeasure,
} from '../solid/index.js';
import type { Point, PreviewData, PreviewFinding, PreviewPiece, PreviewStep } from '../viewer/index.js';

/** What the page needs beyond the solids. */
export interface PreviewParts {
  readonly solids: Solids;
  readonly tenons: readonly TenonMeasure[];
  readonly findings: readonly Finding[];
  readonly glueUp: GlueUp;
  readonly revision: string;
  /** Edges of each body by its id, when they are known already. */
  readonly edges?: ReadonlyMap<string, FeatureEdges>;
}

/** Air left beyond a drawn-out tenon, mm; for looking only. */
const AIR = 20;

/** The page's data: the same triangles as the STL, with edges, moves, measures and findings. */
export function previewData(parts: PreviewParts): PreviewData {
  const { solids, glueUp } = parts;
  const { design } = solids;
  const all = allSolids(solids);
  const boxes = all.map(({ body }) => box(body));
  const apart = apartOf(solids, glueUp);
  const most = (side: 'min' | 'max', pick: (...of: number[]) => number): Point =>
    [0, 1, 2].map((i) => pick(...boxes.map((one) => one[side][i]!))) as unknown as Point;
  return {
    title: design.title,
    revision: parts.revision,
    min: most('min', Math.min),
    max: most('max', Math.max),
    pieces: all.map((solid) => pieceOf(solid, parts.edges?.get(solid.id), apart.get(solid.id) ?? [0, 0, 0])),
    joints: design.joints.map((joint) => ({
      id: joint.id,
      boards: [joint.a, joint.b],
      tenons: joint.tenons.map((tenon) => tenon.id),
      clearances: clearances(parts.tenons.filter((t) => t.joint.id === joint.id)),
    })),
    steps: glueUp.steps.map((step) => stepOf(solids, glueUp, step)),
    findings: parts.findings.map((finding) => findingOf(solids, finding)),
    cautions: [
      ...design.notes,
      'Eye, ear and dust protection; work secured; cutters changed with the plug out; no climb cuts by hand.',
    ],
  };
}

function pieceOf(solid: Solid, known: FeatureEdges | undefined, apart: Vec3): PreviewPiece {
  const seen = known ?? featureEdges(solid.body);
  const lines: number[] = [];
  seen.sharp.forEach((sharp, e) => {
    if (!sharp) return;
    for (const corner of [seen.edges[4 * e]!, seen.edges[4 * e + 1]!]) {
      lines.push(...seen.positions.subarray(3 * corner, 3 * corner + 3));
    }
  });
  return {
    id: solid.id,
    ...wordsOf(solid),
    colour: colourOf(solid),
    positions: base64(Float32Array.from(seen.positions)),
    triangles: base64(seen.triangles),
    edges: base64(Float32Array.from(lines)),
    apart,
  };
}

function wordsOf(solid: Solid): Pick<PreviewPiece, 'name' | 'role' | 'note' | 'size'> {
  if (solid.kind === 'board') {
    const { thickness, width, length } = solid.board.blank;
    return {
      name: solid.board.name,
      role: 'board',
      note: solid.board.material,
      size: [thickness, width, length],
    };
  }
  if (solid.kind === 'tenon') {
    const { thickness, width, length } = solid.tenon;
    return {
      name: `tenon ${solid.id}`,
      role: 'tenon',
      note: 'loose tenon',
      size: [thickness, width, length],
    };
  }
  const note = solid.hardware.bought ? solid.hardware.name : `${solid.hardware.name}, your own`;
  return { name: solid.id.replaceAll('-', ' '), role: 'hardware', note };
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

function stepOf(solids: Solids, glueUp: GlueUp, step: GlueUp['steps'][number]): PreviewStep {
  const names = (boards: readonly string[]) =>
    boards.map((id) => solids.boards.get(id)!.board.name).join(' with ');
  const withTenons = (boards: readonly string[]) => [
    ...boards,
    ...glueUp.seatings.filter(({ board }) => boards.includes(board)).flatMap(({ tenons }) => tenons),
  ];
  const hard = step.freedom === 'sprung' ? `; spring it by ${step.shift.toFixed(2)} mm` : '';
  return {
    text: `bring ${names(step.moving)} to ${names(step.still)}${hard}`,
    moving: withTenons(step.moving),
    still: withTenons(step.still),
    direction: step.direction,
    travel: step.travel,
  };
}

function clearances(measures: readonly TenonMeasure[]): readonly { text: string; mm: number }[] {
  const mortises = measures.flatMap((t) => t.mortises);
  if (mortises.length === 0) return [];
  const least = (pick: (m: (typeof mortises)[number]) => number) => Math.min(...mortises.map(pick));
  return [
    { text: 'cheek', mm: least((m) => m.cheekClearance) },
    { text: 'bottom', mm: least((m) => m.bottomClearance) },
    { text: 'thinnest wall', mm: least((m) => m.wall) },
  ];
}

function findingOf(solids: Solids, finding: Finding): PreviewFinding {
  const { level, message, remedy, subjects } = finding;
  const tenon = subjects.map((id) => solids.tenons.get(id)).find((found) => found !== undefined);
  const body =
    tenon?.body ??
    subjects.map((id) => (solids.boards.get(id) ?? solids.hardware.get(id))?.body).find((one) => one);
  const around = body && box(body);
  const middle = around?.min.map((least, i) => (least + around.max[i]!) / 2) ?? [0, 0, 0];
  return { level, text: message, remedy, subjects, at: middle as unknown as Point };
}

const base64 = (numbers: Float32Array | Uint32Array): string =>
  Buffer.from(numbers.buffer, numbers.byteOffset, numbers.byteLength).toString('base64');
