/** How the narrow edges of a tenon are made to go into a mortise with round ends. */
export type EdgeStyle = 'round' | 'chamfered' | 'square with squared mortise';

/** One way of making a tenon's edges, and the glue area it gives. */
export interface TenonEdge {
  readonly style: EdgeStyle;
  /** Width of the strip, mm: the same for all. */
  readonly stripWidth: number;
  /** Radius of a round edge, or leg of a 45° chamfer; 0 for square, mm. */
  readonly size: number;
  /** Both cheeks over the whole length, mm²: what carries the joint. */
  readonly cheekAreaMm2: number;
  /** Both edges, mm²; 0 where they stand off the wood of the mortise. */
  readonly edgeAreaMm2: number;
}

/** Sizes of a tenon and the mortise it goes into, mm. */
export interface EdgeRequest {
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  readonly mortiseWidth: number;
  readonly mortiseLength: number;
}

/**
 * The three edge styles of one tenon.
 *
 * Round: radius t/2, cheeks 2(w − t)l, edges πtl. Chamfered at 45°: the least leg that keeps half the cheek clearance from
 * the round end of the mortise, cheeks 2(w − 2c)l; its edges do not bear. Square: the mortise is squared with a chisel,
 * cheeks 2wl, edges 2tl.
 */
export function tenonEdges(given: EdgeRequest): readonly TenonEdge[] {
  const { thickness: t, width: w, length: l } = given;
  const c = chamfer(given);
  return [
    {
      style: 'round',
      stripWidth: w,
      size: t / 2,
      cheekAreaMm2: 2 * (w - t) * l,
      edgeAreaMm2: Math.PI * t * l,
    },
    { style: 'chamfered', stripWidth: w, size: c, cheekAreaMm2: 2 * (w - 2 * c) * l, edgeAreaMm2: 0 },
    {
      style: 'square with squared mortise',
      stripWidth: w,
      size: 0,
      cheekAreaMm2: 2 * w * l,
      edgeAreaMm2: 2 * t * l,
    },
  ];
}

/**
 * The least 45° chamfer that lets a rectangular tenon into a mortise with half-round ends, mm.
 *
 * Both ends of the chamfer stay within a circle about the centre of the round end, smaller than it by half the cheek
 * clearance (or by the air at the end of the slot, where that is less); where the arc's centre lies beyond a point, the straight walls decide and the tenon is thin enough already.
 */
export function chamfer({ thickness, width, mortiseWidth, mortiseLength }: EdgeRequest): number {
  const half = thickness / 2;
  const air = Math.max(0, Math.min((mortiseWidth - thickness) / 4, (mortiseLength - width) / 2));
  const reach = mortiseWidth / 2 - air;
  const past = width / 2 - (mortiseLength / 2 - mortiseWidth / 2);
  if (past <= 0) return 0;
  const onCheek = past - Math.sqrt(Math.max(reach ** 2 - half ** 2, 0));
  const onEdge = half - Math.sqrt(Math.max(reach ** 2 - past ** 2, 0));
  return Math.min(Math.max(onCheek, onEdge, 0), half);
}
