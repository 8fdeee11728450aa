import type { Face } from '../board/index.js';
import { add, cross, dot, type Frame, scale, subtract, unit, type Vec3 } from '../frame/index.js';
import type { Holding, RailBearing } from '../shop/index.js';

/**
 * Where a set-up puts the cutter, found as the person finds it: the plate lies on the mouth's face, the rail, guide or template
 * is set from one face, the centre line from another. The mortise's own place is not looked at.
 *
 * @param faces of the board at the holding's stage, board frame
 * @returns board frame: origin at the cutter's axis half way between the stops, z out of the wood; undefined when a face the
 *   set-up names is not there
 */
export function located(holding: Holding, faces: readonly Face[]): Frame | undefined {
  const faceOf = (id: string | undefined) => faces.find((face) => face.id === id)?.frame;
  const mouth = faceOf(holding.mortise.face);
  const from = faceOf(holding.along.from);
  const set = settingOf(holding);
  const side = faceOf(set?.face);
  if (!mouth || !from || !set || !side) return undefined;
  const z = mouth.z;
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
