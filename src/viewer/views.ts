/** Where the eye stands, seen from the middle of the piece; the first six keys, in this order. */
export const VIEWS = {
  corner: [0.8, -1, 0.62],
  front: [0, -1, 0],
  right: [1, 0, 0],
  back: [0, 1, 0],
  top: [0, -0.0001, 1],
  below: [0, -0.0001, -1],
} as const;

export type ViewName = keyof typeof VIEWS;
