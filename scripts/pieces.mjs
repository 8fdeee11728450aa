// Writes what follows from the notation of pieces anew: node scripts/pieces.mjs (after npm run build).
import { writeFileSync } from 'node:fs';
import { pieceSchemaJson } from '../dist/src/notation/index.js';

writeFileSync(new URL('../docs/piece.schema.json', import.meta.url), pieceSchemaJson());
