// Writes what follows from the notation of pieces anew, the schema for editors and the pictures of docs/writing-a-piece.md:
// node scripts/pieces.mjs (after npm run build).
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { isometricView } from '../dist/src/drawing/index.js';
import { viewSvg } from '../dist/src/files/index.js';
import { pieceFrom, pieceSchemaJson } from '../dist/src/notation/index.js';
import { solidsOf, startKernel } from '../dist/src/solid/index.js';
import { picturesOf } from './piece-pictures.mjs';

const docs = new URL('../docs/', import.meta.url);
const pictures = new URL('pictures/', docs);

writeFileSync(new URL('piece.schema.json', docs), pieceSchemaJson());
rmSync(pictures, { recursive: true, force: true });
mkdirSync(pictures);
const page = readFileSync(new URL('writing-a-piece.md', docs), 'utf8');
const drawn = await picturesOf(page, { pieceFrom, startKernel, solidsOf, isometricView, viewSvg });
for (const [file, svg] of drawn) writeFileSync(new URL(file, pictures), svg);
