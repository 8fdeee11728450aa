import {
  type Board,
  type ExpectedVolume,
  grooveVolume,
  type Hole,
  sharedByGrooves,
  stockVolume,
} from '../board/index.js';
import { area, obround, perimeter } from '../profile/index.js';
import { SAGITTA } from '../tolerances.js';
import { metVolume } from './met-volume.js';

/** What a cutter takes out of a board when all of it lies in the wood; undefined when that cannot be said from data alone. */
function taken(board: Board): readonly ExpectedVolume[] | undefined {
  if (board.slots.some((slot) => slot.openAt !== undefined)) return undefined;
  const pocket = (of: { length: number; width: number }, depth: number): ExpectedVolume => {
    const outline = obround(of);
    return { volume: area(outline) * depth, allowance: perimeter(outline) * SAGITTA * depth };
  };
  return [
    ...board.mortises.map((mortise) => pocket(mortise, mortise.depth)),
    ...board.slots.map((slot) => pocket(slot, depthIn(board, slot))),
    ...board.holes.map((hole) => holeVolume(hole, depthIn(board, hole))),
    ...board.grooves.map((groove) => grooveVolume(board, groove)),
  ];
}

/** A through feature goes as far as the board reaches along its axis, when it enters a wide face. */
function depthIn(board: Board, feature: { depth: number | 'through'; at: { z: readonly number[] } }): number {
  if (feature.depth !== 'through') return feature.depth;
  const { length, width, thickness } = board.blank;
  const [x, y, z] = feature.at.z.map(Math.abs);
  return x! * length + y! * width + z! * thickness;
}

function holeVolume(hole: Hole, depth: number): ExpectedVolume {
  const shank = hole.diameter / 2;
  let volume = Math.PI * shank ** 2 * depth;
  let skin = 2 * Math.PI * shank * depth;
  if (hole.counterbore) {
    const radius = hole.counterbore.diameter / 2;
    volume += Math.PI * (radius ** 2 - shank ** 2) * hole.counterbore.depth;
    skin += 2 * Math.PI * radius * hole.counterbore.depth;
  }
  if (hole.countersink) {
    const radius = hole.countersink.diameter / 2;
    const height = (radius - shank) / Math.tan((hole.countersink.angleDeg * Math.PI) / 360);
    volume +=
      (Math.PI * height * (radius ** 2 + radius * shank + shank ** 2)) / 3 - Math.PI * shank ** 2 * height;
    skin += 2 * Math.PI * radius * height;
  }
  return { volume, allowance: skin * SAGITTA };
}

/**
 * The volume a finished board should have, from its data with true arcs: the stock less every feature.
 *
 * @param met for a joint whose tenons are mitred in this board, the joint they meet: what both mortises take is taken once
 * @returns undefined when a feature runs out of the wood by design (an open slot)
 */
export function expectedVolume(
  board: Board,
  met: ReadonlyMap<string, string> = new Map(),
): ExpectedVolume | undefined {
  const cavities = taken(board);
  if (!cavities) return undefined;
  const stock = stockVolume(board);
  return {
    volume: cavities.reduce(
      (left, cavity) => left - cavity.volume,
      stock.volume + metTwice(board, met) + crossed(board),
    ),
    allowance: cavities.reduce((sum, cavity) => sum + cavity.allowance, stock.allowance),
  };
}

const metTwice = ({ mortises }: Board, met: ReadonlyMap<string, string>): number =>
  mortises
    .flatMap((one, i) =>
      mortises
        .slice(i + 1)
        .filter(({ joint }) => met.get(one.joint) === joint)
        .map((other) => metVolume(one, other)),
    )
    .reduce((sum, volume) => sum + volume, 0);

/** Grooves of one face are meant to cross. */
const crossed = (board: Board): number =>
  board.grooves
    .flatMap((one, i) => board.grooves.slice(i + 1).map((other) => sharedByGrooves(board, one, other)))
    .reduce((sum, volume) => sum + volume, 0);
