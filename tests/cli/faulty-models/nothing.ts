export const seat = 230;
