import { expect, test } from 'vitest';
import { faceFrame, faces, makeBoard } from '../../src/board/index.js';
import { pointOut } from '../../src/frame/index.js';
import { sideOfBlank } from '../../src/shop/boards/index.js';

const board = makeBoard({ id: 'rail', blank: { length: 300, width: 70, thickness: 24 } });

test.each(['reference-face', 'opposite-face', 'reference-edge', 'opposite-edge'])(
  'corners of the %s lie on the side of that name, and those of two sides on none',
  (id) => {
    const face = faces(board).find((one) => one.id === id)!;
    const corners = face.region.flat().map(([x, y]) => pointOut(face.frame, [x, y, 0]));
    expect(sideOfBlank(board, corners)).toBe(id.replace('-', ' '));
    const beyond = faceFrame(board, id)!.origin.map((at, i) => at - 5 * faceFrame(board, id)!.z[i]!);
    expect(sideOfBlank(board, [...corners, beyond as unknown as (typeof corners)[number]])).toBeUndefined();
  },
);
