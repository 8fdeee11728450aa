import { explodedView, isometricView, type View } from '../../drawing/index.js';
import type { OutputFile } from '../folder/index.js';
import type { Made } from '../made/index.js';
import { viewSvg } from '../svg/index.js';
import { png } from './png.js';

/** Width of a picture for a listing on the web, pixels. */
const WIDTH = 1200;

/** The piece put together and drawn apart, as line pictures: SVG, and PNG for a listing. */
export async function pictureFiles({ solids }: Made, renderer: Uint8Array): Promise<readonly OutputFile[]> {
  const { title } = solids.design;
  const views: readonly { name: string; view: View; said: string }[] = [
    { name: 'isometric', view: isometricView(solids), said: `${title}, seen from a corner` },
    { name: 'exploded', view: explodedView(solids), said: `${title}, drawn apart along its joints` },
  ];
  const files: OutputFile[] = [];
  for (const { name, view, said } of views) {
    const svg = viewSvg(view, said);
    files.push({ path: `pictures/${name}.svg`, bytes: new TextEncoder().encode(`${svg}\n`) });
    files.push({ path: `pictures/${name}.png`, bytes: await png(svg, WIDTH, renderer) });
  }
  return files;
}
