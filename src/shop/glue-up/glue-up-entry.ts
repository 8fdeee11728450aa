import type { Design, PlacedBoard } from '../../assembly/index.js';
import { type Mortise, mouthOf } from '../../board/index.js';
import { add, angleDeg, directionIn, dot, length, scale, subtract, type Vec3 } from '../../frame/index.js';
import { species, speciesNames } from '../../tables/index.js';
import { SAME_POINT } from '../../tolerances.js';
import { GLUE_UP_PRACTICE as PRACTICE } from '../practice/index.js';
import type { Entry, JointFreedom, Spring } from './entry.js';
import { freedomInGroove } from './panel-entries.js';

/** How each joint of a design is closed. */
export function entriesOf(design: Design): readonly Entry[] {
  const placed = new Map(design.boards.map((one) => [one.board.id, one]));
  const middles = design.joints.map((joint) => ({ joint, middle: joint.seat.origin }));
  return design.joints.map((joint): Entry => {
    const [a, b] = [placed.get(joint.a)!, placed.get(joint.b)!];
    const first = joint.tenons[0]!;
    const cut = (one: PlacedBoard): Mortise =>
      one.board.mortises.find((mortise) => mortise.tenon === first.id)!;
    const fromA = grainOf(cut(a)) <= grainOf(cut(b));
    const into = cut(fromA ? b : a);
    const springs = [a, b].map((one): Spring => {
      const others = middles.filter(
        (other) =>
          other.joint !== joint && (other.joint.a === one.board.id || other.joint.b === one.board.id),
      );
      const reaches = others.map(({ middle }) => length(subtract(middle, joint.seat.origin)));
      return {
        board: one.board.id,
        placed: one,
        reach: reaches.length > 0 ? Math.min(...reaches) : one.board.blank.length,
      };
    });
    return {
      joint,
      owner: fromA ? joint.a : joint.b,
      receiver: fromA ? joint.b : joint.a,
      axis: fromA ? first.place.z : scale(first.place.z, -1),
      engaged: (fromA ? first.intoB : first.intoA) + mouthOf(into).drop,
      springs,
    };
  });
}

/** Of a mortise: 0 in end grain, 1 in an edge, 2 in a wide face. */
function grainOf(mortise: Mortise): number {
  const [x, , z] = mouthOf(mortise).normal.map(Math.abs);
  return x! > Math.SQRT1_2 ? 0 : z! > Math.SQRT1_2 ? 2 : 1;
}

/**
 * How a joint is entered when its owner travels towards its receiver.
 *
 * The tenon goes from the first touch to its seat over the engaged length L; at the first touch it stands aside by
 * L·tan θ. The cheek clearance takes that across, half the edge clearance along the mortise. What is left must be sprung:
 * a cantilever pushed aside at its end, F = 3·E·I·x/l³ (elementary mechanics).
 *
 * @param travel of the owner against the receiver, unit, assembly frame
 */
export function freedomOf(entry: Entry, travel: Vec3): JointFreedom {
  if (entry.inGroove) return freedomInGroove({ ...entry, inGroove: entry.inGroove }, travel);
  const { joint, engaged } = entry;
  const { place } = joint.tenons[0]!;
  const forward = dot(travel, entry.axis);
  const leanDeg = angleDeg(travel, entry.axis);
  if (forward < Math.cos((PRACTICE.mostLeanDeg * Math.PI) / 180)) {
    const shift = forward > 0 ? engaged * Math.tan((leanDeg * Math.PI) / 180) : Number.POSITIVE_INFINITY;
    return {
      joint: joint.id,
      freedom: 'locked',
      leanDeg,
      shift,
      push: [0, 0, 0],
      excess: shift,
      forceN: undefined,
    };
  }
  const [along, across] = directionIn(place, scale(travel, engaged / forward));
  const over = (shift: number, clearance: number) =>
    Math.sign(shift) * Math.max(0, Math.abs(shift) - clearance);
  const overAlong = over(along, joint.fit.edge / 2);
  const overAcross = over(across, joint.fit.cheek);
  const excess = Math.hypot(overAlong, overAcross);
  const shared = { joint: joint.id, leanDeg, shift: Math.hypot(along, across), excess };
  if (excess < SAME_POINT) return { ...shared, freedom: 'free', push: [0, 0, 0], forceN: 0 };
  // the tenon lags behind its seat by the shift, so it is pushed forward along it
  const push: Vec3 = add(scale(place.x, overAlong), scale(place.y, overAcross));
  const forces = entry.springs.map((spring) => forceOf(spring, push)).filter((force) => force !== undefined);
  const forceN = forces.length > 0 ? Math.min(...forces) : undefined;
  const sprung = excess <= PRACTICE.mostSpring && forceN !== undefined && forceN <= PRACTICE.mostSpringForce;
  return { ...shared, freedom: sprung ? 'sprung' : 'locked', push, forceN };
}

/** A board pushed along its grain does not bend, and of a sheet no stiffness is known. */
function forceOf(spring: Spring, push: Vec3): number | undefined {
  const { board, place } = spring.placed;
  if (!speciesNames.includes(board.material)) return undefined;
  const [grain, across, through] = directionIn(place, push);
  if (Math.abs(grain) > Math.hypot(across, through)) return undefined;
  const { width, thickness } = board.blank;
  const stiffness = (depth: number, breadth: number) =>
    (3 * species(board.material).elasticity * (breadth * depth ** 3)) / 12 / spring.reach ** 3;
  return Math.hypot(stiffness(width, thickness) * across, stiffness(thickness, width) * through);
}
