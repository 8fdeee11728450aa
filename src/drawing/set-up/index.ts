export { cardFigure } from './card-figure.js';
export { setUpPicture } from './set-up-picture.js';
export { setUpSection } from './set-up-section.js';
