// The living plan's own scripts: what works in its worker, and what the build packs around it.
export type { Answer, Asked, Outfit, Wanted } from './messages.js';
export { type Line, serve } from './serve.js';
export { pageKinds } from './whole-work.js';
