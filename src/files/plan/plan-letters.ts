import { type PlanContent, strokesOf } from '../../drawing/index.js';
import { onceForEach } from '../../once.js';
import type { Letters } from './pdf-letters.js';

/** Every letter of what all papers show, of each font; a row of letters that goes on in the next one ends with a blank. */
export const lettersOf = onceForEach(({ sections, appendix, templates }: PlanContent): Letters => {
  const [plain, bold] = [new Set([' ']), new Set([' '])];
  const drawn = [
    ...[...sections, ...appendix].flatMap(({ drafts }) => drafts.flatMap(({ entities }) => entities)),
    ...templates.flatMap(({ artwork }) => artwork.strokes),
  ];
  for (const stroke of strokesOf(drawn))
    if (stroke.kind === 'text') for (const letter of stroke.text) (stroke.bold ? bold : plain).add(letter);
  return { plain: [...plain].sort(), bold: [...bold].sort() };
});
