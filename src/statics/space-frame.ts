import { cross, dot, length, scale, subtract, unit, type Vec3 } from '../frame/index.js';
import { cholesky } from './cholesky.js';

/** A straight bar between two nodes. mm, MPa. */
export interface Bar {
  readonly from: number;
  readonly to: number;
  readonly elasticity: number;
  readonly shearModulus: number;
  /** mm² */
  readonly area: number;
  /** mm⁴: bending along `deep`, bending across it, torsion. */
  readonly inertia: number;
  readonly inertiaAcross: number;
  readonly torsion: number;
  /** The way along which the section's `inertia` bends; its part along the bar is left out. */
  readonly deep: Vec3;
}

/** What joins two nodes at a place off both, or one node to the floor. mm, N/mm, N·mm/rad; rigid where infinite. */
export interface Tie {
  readonly from?: number;
  readonly to: number;
  readonly at: Vec3;
  /** Three unit vectors square to each other, and how stiff it is along and about each; 0 lets go. */
  readonly axes: readonly [Vec3, Vec3, Vec3];
  readonly moves: Vec3;
  readonly turns: Vec3;
}

/** A force on a node at a place off it. N, mm. */
export interface FrameLoad {
  readonly node: number;
  readonly at: Vec3;
  readonly force: Vec3;
}

/** What a tie passes from `from` to `to`, along and about its axes, at its place. N, N·mm. */
export interface Passed {
  readonly force: Vec3;
  readonly moment: Vec3;
}

/** What a load does. */
export interface Bent {
  /** Of every node: how far it moves, mm, and turns, radians. */
  readonly moves: readonly Vec3[];
  readonly turns: readonly Vec3[];
  /** Of every tie. */
  readonly passed: readonly Passed[];
}

/** Something that gives in one way: `stiffness` times what its nodes move and turn along `move` and `turn` is its force. */
interface Spring {
  readonly stiffness: number;
  readonly ends: readonly { readonly node: number; readonly move: Vec3; readonly turn: Vec3 }[];
}

const NONE: Vec3 = [0, 0, 0];

/** A rigid tie, times the stiffest bar. */
const RIGID = 1e4;

/**
 * A frame of straight bars in space, by direct stiffness: small turns, no shear of the bars, ties rigid or springs.
 *
 * The energy of a bar is that of six springs: its length, its twist, and for each way of bending the turn of one end against
 * the other and of both against the chord.
 *
 * @returns what bends it for each load; undefined when it can move without bending anything
 */
export function spaceFrame(
  nodes: readonly Vec3[],
  bars: readonly Bar[],
  ties: readonly Tie[],
): ((loads: readonly FrameLoad[]) => Bent) | undefined {
  const size = 6 * nodes.length;
  const matrix = new Float64Array(size * size);
  for (const bar of bars) for (const spring of springsOf(bar, nodes)) put(matrix, size, spring);
  let [move, turn] = [0, 0];
  for (let i = 0; i < size; i += 1) {
    const stiff = RIGID * matrix[i * size + i]!;
    if (i % 6 < 3) move = Math.max(move, stiff);
    else turn = Math.max(turn, stiff);
  }
  const tied = ties.map((tie) => tieSprings(tie, nodes, { move, turn }));
  for (const spring of tied.flat()) put(matrix, size, spring);
  const factored = cholesky(matrix, size);
  if (!factored) return undefined;
  return (loads) => {
    const right = new Float64Array(size);
    for (const { node, at, force } of loads) {
      const moment = cross(subtract(at, nodes[node]!), force);
      [...force, ...moment].forEach((part, i) => {
        right[6 * node + i]! += part;
      });
    }
    const u = factored.solve(right);
    const along = ([x, y, z]: Vec3, i: number): number => x * u[i]! + y * u[i + 1]! + z * u[i + 2]!;
    const forceOf = ({ stiffness, ends }: Spring): number => {
      let given = 0;
      for (const { node, move, turn } of ends) given += along(move, 6 * node) + along(turn, 6 * node + 3);
      return -stiffness * given;
    };
    const three = (i: number): Vec3 => [u[i]!, u[i + 1]!, u[i + 2]!];
    return {
      get moves() {
        return nodes.map((_, i) => three(6 * i));
      },
      get turns() {
        return nodes.map((_, i) => three(6 * i + 3));
      },
      passed: tied.map((springs) => {
        const [x, y, z, xx, yy, zz] = springs.map(forceOf);
        return { force: [x!, y!, z!], moment: [xx!, yy!, zz!] };
      }),
    };
  };
}

function springsOf(bar: Bar, nodes: readonly Vec3[]): readonly Spring[] {
  const run = subtract(nodes[bar.to]!, nodes[bar.from]!);
  const long = length(run);
  const along = unit(run);
  const deep = unit(subtract(bar.deep, scale(along, dot(along, bar.deep))));
  const wide = cross(along, deep);
  const between = (stiffness: number, move: Vec3, turnFrom: Vec3, turnTo: Vec3): Spring => ({
    stiffness,
    ends: [
      { node: bar.from, move: scale(move, -1), turn: turnFrom },
      { node: bar.to, move, turn: turnTo },
    ],
  });
  const { elasticity, shearModulus, area, inertia, inertiaAcross, torsion } = bar;
  // `about` is the axis a bending turns about, `sideways` the way it moves the bar
  const bending = (inertiaOf: number, about: Vec3, sideways: Vec3): readonly Spring[] => [
    between((elasticity * inertiaOf) / long, NONE, scale(about, -1), about),
    between((3 * elasticity * inertiaOf) / long, scale(sideways, -2 / long), about, about),
  ];
  return [
    between((elasticity * area) / long, along, NONE, NONE),
    between((shearModulus * torsion) / long, NONE, scale(along, -1), along),
    ...bending(inertia, wide, deep),
    ...bending(inertiaAcross, scale(deep, -1), wide),
  ];
}

function tieSprings(
  { from, to, at, axes, moves, turns }: Tie,
  nodes: readonly Vec3[],
  rigid: { readonly move: number; readonly turn: number },
): readonly Spring[] {
  const ends = [...(from === undefined ? [] : [{ node: from, sense: -1 }]), { node: to, sense: 1 }];
  return [
    ...axes.map(
      (axis, i): Spring => ({
        stiffness: Math.min(moves[i]!, rigid.move),
        ends: ends.map(({ node, sense }) => ({
          node,
          move: scale(axis, sense),
          turn: scale(cross(subtract(at, nodes[node]!), axis), sense),
        })),
      }),
    ),
    ...axes.map(
      (axis, i): Spring => ({
        stiffness: Math.min(turns[i]!, rigid.turn),
        ends: ends.map(({ node, sense }) => ({ node, move: NONE, turn: scale(axis, sense) })),
      }),
    ),
  ];
}

/** Adds a spring to the lower half of the matrix. */
function put(matrix: Float64Array, size: number, { stiffness, ends }: Spring): void {
  for (const one of ends)
    for (const other of ends) {
      if (other.node > one.node) continue;
      for (let i = 0; i < 6; i += 1) {
        const part = stiffness * (i < 3 ? one.move[i]! : one.turn[i - 3]!);
        if (part === 0) continue;
        const row = (6 * one.node + i) * size + 6 * other.node;
        for (let j = 0; j < 6; j += 1)
          matrix[row + j]! += part * (j < 3 ? other.move[j]! : other.turn[j - 3]!);
      }
    }
}

/** Twist of a rectangle, mm⁴: Roark, from memory; 4 % off at most. */
export function torsionOf(one: number, other: number): number {
  const [a, b] = [Math.max(one, other), Math.min(one, other)];
  return a * b ** 3 * (1 / 3 - 0.21 * (b / a) * (1 - (b / a) ** 4 / 12));
}
