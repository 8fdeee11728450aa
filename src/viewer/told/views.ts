/** Where the eye stands, seen from the middle of the piece; the first six keys, in this order. */
export const VIEWS = {
  corner: [0.8, -1, 0.62],
  front: [0, -1, 0],
  right: [1, 0, 0],
  back: [0, 1, 0],
  // not quite over the pole, where up has no meaning
  top: [0, -0.00001, 1],
  below: [0, -0.00001, -1],
} as const;

export type ViewName = keyof typeof VIEWS;

/** All but the corner's are flat, square to the piece, as on a drawing. */
export const isFlat = (name: ViewName): boolean => name !== 'corner';
