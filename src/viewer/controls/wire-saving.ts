import type { Stage } from '../stage/index.js';
import { pictureName, pictureOf } from '../stage/index.js';
import type { Looker } from './looker.js';
import { onPage, say } from './on-page.js';

/** The button that saves the picture as it is seen. */
export function wirePicture(looker: Looker, stage: Stage): void {
  onPage('save').addEventListener('click', async () => {
    stage.drawNow();
    const picture = await pictureOf(stage.canvas, document.querySelector<SVGSVGElement>('#over')!);
    const link = document.createElement('a');
    link.download = pictureName(looker.data);
    link.href = URL.createObjectURL(picture);
    link.click();
    // the browser has taken it by then
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
    say(`Saved as ${link.download}.`);
  });
}
