import type { Fastening } from '../assembly/index.js';
import { pointOut, scale, type Vec3 } from '../frame/index.js';
import { OVERLAP_MM3 } from '../tolerances.js';
import { type Body, matrix } from './kernel.js';
import { boxIn, hit, sharedVolume } from './measure.js';
import type { Solids } from './solids.js';

/** What was found of one fastening, on the solids; mm. */
export interface FasteningMeasure {
  /** How much of the screw is in the held board. */
  readonly bite: number;
  /** Wood between the screw's tip and the far face; 0 or less when it comes through. */
  readonly underTip: number;
  /** How far it can move with the held board before it meets the other, each way; as far as asked at most. */
  readonly room: number;
  /** How far a button's tongue stays in its slot at the far end of its travel; undefined for a screw. */
  readonly tongueLeft: number | undefined;
}

/** Halvings when the room of a fastening that is too tight is looked for: to a thousandth of its travel. */
const HALVINGS = 10;

/** Measures a fastening by moving its pieces with the board they hold. */
export function measureFastening(solids: Solids, fastening: Fastening): FasteningMeasure {
  const held = solids.boards.get(fastening.held)!;
  const to = solids.boards.get(fastening.to)!;
  const pieces = [fastening.screw.id, ...fastening.with].map((id) => solids.hardware.get(id)!.body);
  const screw = pieces[0]!;
  const { kernel } = solids;
  const tip = boxIn(screw, fastening.at).max[2];
  const stock = kernel.keep(held.stock.transform(matrix(held.place)));
  const ahead = (z: number): Vec3 => pointOut(fastening.at, [0, 0, z]);
  const far = hit(stock, ahead(0.01), ahead(1000));
  const shift = (by: number) => scale(fastening.along, by);
  const meets = (by: number) => pieces.some((piece) => shares(piece, to.body, shift(by)));
  const half = fastening.travel / 2;
  const free = (way: 1 | -1): number => {
    if (!meets(way * half)) return half;
    let [clear, met] = [0, half];
    for (let i = 0; i < HALVINGS; i += 1) {
      const tried = (clear + met) / 2;
      if (meets(way * tried)) met = tried;
      else clear = tried;
    }
    return clear;
  };
  return {
    bite: tip,
    underTip: (far === undefined ? 0 : far + 0.01) - tip,
    room: meets(0) ? 0 : Math.min(free(1), free(-1)),
    tongueLeft: fastening.tongue && tongueLeft(solids, fastening, half),
  };
}

function shares(piece: Body, still: Body, by: Vec3): boolean {
  const moved = piece.translate([...by]);
  const shared = sharedVolume(moved, still);
  moved.delete();
  return shared > OVERLAP_MM3;
}

/** What of the button stands in the stock of the board that holds it, moved either way. */
function tongueLeft(solids: Solids, fastening: Fastening, half: number): number {
  const to = solids.boards.get(fastening.to)!;
  const button = solids.hardware.get(fastening.with[0]!)!;
  const stock = solids.kernel.keep(to.stock.transform(matrix(to.place)));
  const left = [half, -half].map((by) => {
    const moved = button.body.translate([...scale(fastening.along, by)]);
    const inside = moved.intersect(stock);
    const box = inside.isEmpty() ? undefined : boxIn(inside, button.hardware.place);
    moved.delete();
    inside.delete();
    return box ? box.max[0] - box.min[0] : 0;
  });
  return Math.min(...left);
}
