import type { Face } from '../../board/index.js';
import { add, cross, dot, type Frame, scale, subtract, unit, type Vec3 } from '../../frame/index.js';
import type { Holding, LineMarks, RailBearing } from '../../shop/index.js';

/**
 * Where a set-up puts the cutter, found as the person finds it: the plate lies on the mouth's face, the rail, guide or template
 * is set from one face or by two marks, the centre line from another. The mortise's own place is not looked at.
 *
 * @param faces of the board at the holding's stage, board frame
 * @returns board frame: origin at the cutter's axis half way between the stops, z out of the wood; undefined when a face the
 *   set-up names is not there
 */
export function located(holding: Holding, faces: readonly Face[]): Frame | undefined {
  const faceOf = (id: string | undefined) => faces.find((face) => face.id === id)?.frame;
  const mouth = faceOf(holding.mortise.face);
  const from = faceOf(holding.along.from);
  if (!mouth || !from) return undefined;
  const z = mouth.z;
  if (holding.marked) {
    const line = markedLine(holding.marked.centreLine, mouth, faceOf);
    if (!line) return undefined;
    // the way from the arris into the wood
    const inwards = dot(line.along, from.z) < 0 ? line.along : scale(line.along, -1);
    const start = dot(subtract(from.origin, line.point), from.z) / dot(inwards, from.z);
    const x = holding.along.side === 'start' ? inwards : scale(inwards, -1);
    const origin = add(line.point, scale(inwards, start + holding.along.centre));
    return { origin, x, y: cross(z, x), z };
  }
  const set = settingOf(holding);
  const side = faceOf(set?.face);
  if (!set || !side) return undefined;
  const level = (v: Vec3): Vec3 => unit(subtract(v, scale(z, dot(v, z))));
  const outwards = turned(level(side.z), z, set.turnDeg);
  const y = scale(outwards, set.out);
  const x = cross(y, z);
  // walk from the centre to both faces: each walk must end on its face
  const towards = dot(from.z, x) > 0 ? x : scale(x, -1);
  const [a, b] = [from.z, side.z];
  const offA = dot(a, subtract(from.origin, mouth.origin)) - holding.along.centre * dot(a, towards);
  const offB = dot(b, subtract(side.origin, mouth.origin)) - set.distance * dot(b, outwards);
  const [ax, ay, bx, by] = [dot(a, x), dot(a, y), dot(b, x), dot(b, y)];
  const whole = ax * by - ay * bx;
  const origin = add(
    mouth.origin,
    add(scale(x, (offA * by - offB * ay) / whole), scale(y, (offB * ax - offA * bx) / whole)),
  );
  return { origin, x, y, z };
}

/**
 * Where marks put a guide board: its working edge along them, its middle beside the cutter.
 *
 * @param cutter frame of {@link located}
 * @param length of the guide
 * @returns the guide's own frame in the board's: x along its working edge, y away from the cutter, z up
 */
export function guideByMarks(
  marks: LineMarks,
  cutter: Frame,
  faces: readonly Face[],
  mouth: string,
  length: number,
): Frame | undefined {
  const faceOf = (id: string) => faces.find((face) => face.id === id)?.frame;
  const plane = faceOf(mouth);
  const line = plane && markedLine(marks, plane, faceOf);
  if (!plane || !line) return undefined;
  const toCutter = subtract(cutter.origin, line.point);
  const middle = add(line.point, scale(line.along, dot(toCutter, line.along)));
  const away = unit(subtract(middle, cutter.origin));
  const x = cross(away, plane.z);
  return { origin: subtract(middle, scale(x, length / 2)), x, y: away, z: plane.z };
}

/** A line through two pencil marks; undefined when a face they name is not there. */
function markedLine(
  marks: LineMarks,
  mouth: Frame,
  faceOf: (id: string) => Frame | undefined,
): { readonly point: Vec3; readonly along: Vec3 } | undefined {
  const [p, q] = marks.map(({ on, from, at }) => {
    const [beside, end] = [faceOf(on), faceOf(from)];
    if (!beside || !end) return undefined;
    const arris = unit(cross(mouth.z, beside.z));
    const inwards = dot(arris, end.z) < 0 ? arris : scale(arris, -1);
    return add(corner(mouth, beside, end), scale(inwards, at));
  });
  return p && q ? { point: p, along: unit(subtract(q, p)) } : undefined;
}

/** The point three planes share. */
function corner(a: Frame, b: Frame, c: Frame): Vec3 {
  const off = (one: Frame) => dot(one.z, one.origin);
  const whole = dot(a.z, cross(b.z, c.z));
  return [
    [cross(b.z, c.z), off(a)] as const,
    [cross(c.z, a.z), off(b)] as const,
    [cross(a.z, b.z), off(c)] as const,
  ].reduce<Vec3>((sum, [direction, by]) => add(sum, scale(direction, by / whole)), [0, 0, 0]);
}

/** What fixes the cutter across the mortise. */
interface Setting {
  readonly face: string;
  readonly distance: number;
  /** The face's side in the set-up: +1 for far. */
  readonly out: 1 | -1;
  /** How far a wedge turns the rail from the face, about z. */
  readonly turnDeg: number;
}

function settingOf(holding: Holding): Setting | undefined {
  const { near, far, across } = holding;
  if (near) return { ...railSetting(near), out: -1, turnDeg: turnOf(near, -1) };
  if (far) return { ...railSetting(far), out: 1, turnDeg: turnOf(far, 1) };
  if (!across) return undefined;
  return { face: across.from, distance: across.centre, out: across.side === 'far' ? 1 : -1, turnDeg: 0 };
}

const railSetting = (rail: RailBearing) => ({ face: rail.face, distance: rail.toFace });

/** A wedge thick at its -x or +x end turns the rail from the face by its angle. */
function turnOf(rail: RailBearing, out: 1 | -1): number {
  const { wedge } = rail;
  if (wedge?.thickEnd === 'end') return out * wedge.angleDeg;
  if (wedge?.thickEnd === 'start') return -out * wedge.angleDeg;
  return 0;
}

function turned(v: Vec3, about: Vec3, deg: number): Vec3 {
  const rad = (deg * Math.PI) / 180;
  return add(scale(v, Math.cos(rad)), scale(cross(about, v), Math.sin(rad)));
}
