import type { Joint, MitredEnd, Tenon } from '../../joinery/index.js';
import { shortBy } from '../../joinery/index.js';
import type { Say } from '../../length/index.js';

/** An end of a tenon that is cut to a mitre, because another comes to meet it. mm, degrees. */
export interface TenonMitre {
  /** Where they meet. */
  readonly board: string;
  /** Out of square, across the tenon's thickness. */
  readonly angleDeg: number;
  /** How much shorter the tenon is at the short point. */
  readonly shortBy: number;
  readonly gap: number;
  /** The joint it meets, and that joint's other board: the short point is on its side. */
  readonly meets: string;
  readonly shortTowards: string;
}

/** The mitred ends of a tenon; none where both ends are square. */
export function tenonMitres(joint: Joint, tenon: Tenon, joints: readonly Joint[]): readonly TenonMitre[] {
  const at = (board: string, mitre: MitredEnd | undefined): readonly TenonMitre[] => {
    if (!mitre) return [];
    const { angleDeg, gap, meets } = mitre;
    const mate = joints.find(({ id }) => id === meets)!;
    return [
      {
        board,
        angleDeg,
        shortBy: shortBy(tenon, mitre),
        gap,
        meets,
        shortTowards: mate.a === board ? mate.b : mate.a,
      },
    ];
  };
  return [...at(joint.a, tenon.mitreA), ...at(joint.b, tenon.mitreB)];
}

/** How an end is cut and which way it goes in. */
export const mitreWords = (mitre: TenonMitre, say: Say): string =>
  `end in ${mitre.board} mitred ${say.angle(mitre.angleDeg)} out of square, ${say.fine(mitre.shortBy)} shorter at the short point; short point towards ${mitre.shortTowards}; a gap of ${say.fine(mitre.gap)} to the tenon of joint ${mitre.meets}; no glue on the ends`;
