/** A figure in whole parts of one. The middle of two settled figures lies half way between two others: the limit stands aside of it. Never -0. */
export const rounded = (value: number, parts: number): number =>
  (Math.sign(value) * Math.round(Math.abs(value) * parts + 0.19)) / parts + 0;
