import type { Board } from '../../board/index.js';
import { pointIn, pointOut, type Vec2 } from '../../frame/index.js';
import { forRouter, speaker } from '../../length/index.js';
import { bounds, type Region } from '../../profile/index.js';
import { COPLANAR } from '../../tolerances.js';
import { type Holding, holdOver } from '../holding/index.js';
import { HOLD } from '../practice/index.js';
import type { FigureRequest } from './figure-request.js';
import { judged } from './judged.js';
import type { Figure } from './setup-card.js';

/** Wood under the plate or base beyond the cutter, at both ends of its travel, with the support blocks. */
export function supportFigure({ holding, work, outlines, aids, shop }: FigureRequest): Figure {
  const tops: Region = holding.supports.flatMap(({ aid, place }) => {
    const board = aids.find((one) => one.board.id === aid)?.board;
    return board ? topOf(board, place, holding) : [];
  });
  const travel = (holding.mortise.length - holding.mortise.width) / 2;
  const hold = holdOver([...work.mouth, ...tops], outlines[holding.travelling.what], travel);
  // a horn takes the place of a block at its end
  const sides = holding.horn ? [hold.near, hold.far] : [hold.near, hold.far, hold.start, hold.end];
  return judged(
    speaker(forRouter(shop.units)),
    'support under the plate',
    HOLD,
    Math.max(0, Math.min(...sides)),
    [],
    "of support beyond the cutter's centre on the worst side, support blocks in place",
  );
}

/** The top of a support block, as its box in the mortise's x and y. */
function topOf(board: Board, place: Holding['supports'][number]['place'], holding: Holding): Region {
  const box = bounds(board.outline);
  const corners = [box.minX, box.maxX].flatMap((x) =>
    [box.minY, box.maxY].flatMap((y) =>
      [0, board.blank.thickness].map((z) => pointIn(holding.mortise.at, pointOut(place, [x, y, z]))),
    ),
  );
  const highest = Math.max(...corners.map(([, , z]) => z));
  const top = corners.filter(([, , z]) => z > highest - COPLANAR);
  const xs = top.map(([x]) => x);
  const ys = top.map(([, y]) => y);
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const loop: readonly Vec2[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  return [loop];
}
