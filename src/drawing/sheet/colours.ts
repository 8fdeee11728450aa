import type { Solid } from '../../solid/index.js';

/** A colour as `#rrggbb`, sRGB. */
export type Colour = `#${string}`;

/** Woods by their look, our own choice: pale, warm, red-brown, dark. */
const WOODS: readonly { readonly words: RegExp; readonly colour: Colour }[] = [
  { words: /walnut/, colour: '#7a5a44' },
  { words: /cherry|mahogany|alder|cedar/, colour: '#b9805a' },
  { words: /oak|hickory|teak/, colour: '#c9a878' },
  { words: /pine|fir|spruce/, colour: '#e3c48e' },
  { words: /phenolic/, colour: '#5d5148' },
  { words: /board/, colour: '#a58f78' },
];

/** Ash, maple, birch and whatever is not named. */
const PALE_WOOD: Colour = '#dcc9a3';

/** Tenons stand out from every wood. */
const TENON: Colour = '#3f7f7a';

const METAL: Colour = '#8d959c';
const KNOB: Colour = '#4b3f55';
/** What the person already owns. */
const OWNED: Colour = '#5f6b78';

/** The colour a piece is shown in, by its wood or its role. */
export function colourOf(solid: Solid): Colour {
  if (solid.kind === 'tenon') return TENON;
  if (solid.kind === 'board') return woodColour(solid.board.material);
  if (!solid.hardware.bought) return OWNED;
  return solid.hardware.kind === 'knob' ? KNOB : METAL;
}

/** The colour of a material by name. */
const woodColour = (material: string): Colour =>
  WOODS.find(({ words }) => words.test(material.toLowerCase()))?.colour ?? PALE_WOOD;

/** Sheets and composites show no direction of grain. */
export const hasGrain = (material: string): boolean => !/ply|board|phenolic/.test(material.toLowerCase());

/** A colour in more or less light: darker below 1, toward white above. */
export function shaded(colour: Colour, light: number): Colour {
  const parts = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  const lit = parts.map((part) => {
    const value = light <= 1 ? part * light : part + (255 - part) * (light - 1);
    return Math.round(Math.min(255, value)).toString(16).padStart(2, '0');
  });
  return `#${lit.join('')}`;
}
