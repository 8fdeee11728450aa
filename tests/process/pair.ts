import { writeFileSync } from 'node:fs';
import path from 'node:path';

/** Two boards and one joint: the least that is made, checked and written whole. */
const PAIR = `design: pair
title: Post on a sill
about: The corner of a potting shed that the door hangs on.
wood: white ash
piece: [width, thick, height]
dimensions:
  width: 300 from 200 to 500; Outside, left to right
  height: 300 from 200 to 500; Outside, bottom to top
  thick: 26 from 15 to 36; Thickness
  rail: 60 from 50 to 80; Width of each board
  cutter: 8 from 6 to 14; Width of the mortises
boards:
  sill: { grain: left-right, face: front, bottom: piece, wide: rail, like: piece }
  post: { grain: up, face: front, left: piece, wide: rail, like: piece, top: piece, bottom: top of sill }
joints:
  post to sill: { tenons: 1, cutter: cutter }
`;

/** Writes the pair into a folder. @returns its path, to be made by */
export function pairIn(folder: string): string {
  const file = path.join(folder, 'pair.yaml');
  writeFileSync(file, PAIR);
  return file;
}
