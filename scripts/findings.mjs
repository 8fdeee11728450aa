// Writes docs/findings.md anew: node scripts/findings.mjs (after npm run build).
import { writeFileSync } from 'node:fs';
import { findingsMd } from '../dist/src/checks/index.js';

writeFileSync(new URL('../docs/findings.md', import.meta.url), findingsMd());
