export { plotterSheet } from './plotter-sheet.js';
export { type ArtworkOptions, type TemplateArtwork, templateArtwork } from './template-artwork.js';
export { templateHead } from './template-head.js';
export type { KeyDimension } from './template-keys.js';
export { onBlank, type TemplatePlace, templatePlaces } from './template-places.js';
export type { TilePaper } from './tile-footer.js';
export { type TiledTemplate, tiledTemplate, tileSheets } from './tile-sheets.js';
export {
  type MatchMark,
  OVERLAP,
  TILE_WINDOW,
  type Tile,
  type Tiled,
  type TilePlan,
  tilePlan,
} from './tiling.js';
