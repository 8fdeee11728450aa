import type { Design } from '../../assembly/index.js';
import { faces } from '../../board/index.js';
import { angleDeg } from '../../frame/index.js';
import { type Joint, meanLength, type Tenon } from '../../joinery/index.js';
import { area, obround } from '../../profile/index.js';
import { PARALLEL_DEG } from '../../tolerances.js';
import { GLUE_UP_PRACTICE as PRACTICE } from '../practice/index.js';

/** Glue of all joints of a design. Areas in mm², masses in grams. */
export interface GlueMass {
  /** Cheeks of tenons. */
  readonly areaMm2: number;
  /** Joints glued over their whole seat, and the wood on which they meet, mouths of mortises left out. */
  readonly seams: readonly string[];
  readonly seamMm2: number;
  /** Edge joints in blanks that are wider than the lumber. */
  readonly blanksMm2: number;
  readonly grams: number;
  /** At the thinnest and the thickest usual spread. */
  readonly leastGrams: number;
  readonly mostGrams: number;
}

/** Both cheeks of a tenon, flat part only, in both boards: 2 · (width − thickness) · its mean length, mm². */
export const cheekArea = (tenon: Tenon): number =>
  2 * Math.max(tenon.width - tenon.thickness, 0) * meanLength(tenon);

/**
 * How much glue the cheeks of all tenons take, and all seams; what is squeezed out and left in the pot comes on top.
 *
 * @param blanksMm2 edge joints in blanks, glued up before they are milled
 */
export function glueMass(design: Design, blanksMm2 = 0): GlueMass {
  const { usual, least, most } = PRACTICE.spread;
  const seams = design.joints.filter((joint) => isSeam(design, joint));
  const sum = (of: readonly number[]) => of.reduce((total, one) => total + one, 0);
  const areaMm2 = sum(design.joints.flatMap(({ tenons }) => tenons.map(cheekArea)));
  const seamMm2 = sum(seams.map((joint) => joint.contactAreaMm2 - mouths(design, joint)));
  const all = areaMm2 + seamMm2 + blanksMm2;
  return {
    areaMm2,
    seams: seams.map(({ id }) => id),
    seamMm2,
    blanksMm2,
    grams: (all * usual) / 1e6,
    leastGrams: (all * least) / 1e6,
    mostGrams: (all * most) / 1e6,
  };
}

const mortised = ({ boards }: Design, id: string, joint: Joint) => {
  const { board, place } = boards.find((one) => one.board.id === id)!;
  return { board, place, mortises: board.mortises.filter((mortise) => mortise.joint === joint.id) };
};

/** Where the grain of both boards runs along the seat, glue on the wood itself holds them. */
function isSeam(design: Design, joint: Joint): boolean {
  const [a, b] = [joint.a, joint.b].map((id) => mortised(design, id, joint));
  const alongGrain = [a!, b!].every(({ board, mortises: [first] }) =>
    faces(board).some(({ id, grain }) => id === first?.face && grain !== 'end'),
  );
  const turned = angleDeg(a!.place.x, b!.place.x);
  return alongGrain && Math.min(turned, 180 - turned) < PARALLEL_DEG;
}

const mouths = (design: Design, joint: Joint): number =>
  mortised(design, joint.a, joint).mortises.reduce(
    (sum, { length, width }) => sum + area(obround({ length, width })),
    0,
  );
