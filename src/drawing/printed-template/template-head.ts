import { rulesOf } from '../../length/index.js';
import { heading, list, paragraph, table } from '../../shop/index.js';
import type { DrawnFigure, FlowBlock } from '../flow/index.js';
import {
  clearOfLines,
  type DrawingUnits,
  letters,
  moved,
  path,
  roomOf,
  type SheetEntity,
} from '../sheet/index.js';
import { size, toolSize } from '../template/index.js';
import { keyFigure } from './template-keys.js';
import { SAW_OFF } from './template-marks.js';
import type { TiledTemplate } from './tile-sheets.js';

/** How much larger than its part a template is left at the pins, mm. */
const PIN_ROOM = 20;

const MOST: readonly [width: number, height: number] = [150, 56];

/** What stands before the sheets of a template: what it is for, how its sheets lie, what to measure, what its marks mean. */
export function templateHead(
  tiled: TiledTemplate,
  units: DrawingUnits,
  cutter: number,
  bush: number | undefined,
): readonly FlowBlock[] {
  const { artwork, plan } = tiled;
  const { board, serves, turnedOver, keys, places, rows } = artwork;
  const spoken = rulesOf(units)[0]!;
  const count = plan.tiles.filter(({ number }) => number !== undefined).length;
  const pins = places.filter(({ kind }) => kind === 'pin');
  const screws = places.filter(({ kind }) => kind === 'screw');
  return [
    heading(`Template: ${board.name}`, 1),
    paragraph(
      `For ${serves.join(', ')}${turnedOver.length > 0 ? `; turned over, printed side down, for ${turnedOver.join(', ')}` : ''}. Seen from above: reference face down on the bench, opposite face up, not mirrored.`,
    ),
    paragraph(
      `${count} ${count === 1 ? 'sheet' : 'sheets'} in ${plan.rows} ${plan.rows === 1 ? 'row' : 'rows'} of ${plan.columns}. Lay the sheets out as below; on every seam cut one sheet along the dashed line, lay it on its neighbour so that crosses of one name meet, and tape. Then measure the two sizes below across the joins before you paste. Use spray adhesive or tape, not water-based paste: it stretches paper.`,
    ),
    mapFigure(tiled),
    heading('Measure after taping, and on the finished template'),
    table(
      ['size check', 'must be', 'where'],
      [
        ...keys.map((key) => [
          key.what,
          keyFigure(key, units),
          key.axis === 'x' ? 'along the reference edge' : 'along the reference end',
        ]),
      ],
    ),
    paragraph(
      artwork.standOff === 0
        ? `The line to cut is the part's own outline: follow the template with a bearing as wide as the cutter (${toolSize(cutter, spoken)}).`
        : `The line to cut stands ${toolSize(artwork.standOff, spoken)} inside the part: guide bush of ${toolSize(bush ?? 0, spoken)} with the ${toolSize(cutter, spoken)} cutter.`,
    ),
    heading('What the lines and marks mean'),
    list([
      `Dash-dot line: saw here first, ${size(SAW_OFF, spoken)} outside the outline; rout the rest in light passes.`,
      ...(artwork.hasDownhill
        ? [
            'Arrow beside an edge: the way to rout it downhill, so that the grain is laid down and not lifted. Filled head: as the template lies, feeding against the cutter. Open head: turn board and template over for that stretch.',
          ]
        : ['No routed edge runs across the grain, so there is no uphill cut.']),
      'End grain: saw it, or rout it before the long edges, with a block behind the corner where the cutter leaves.',
      pins.length > 0
        ? `Pins: ${pins.length} dowel${pins.length === 1 ? '' : 's'} of ${toolSize(pins[0]!.diameter, spoken)} through the template, ${pins.map(({ where }) => where).join(', ')}: push the board against them. No cutter of this template comes to them. Leave the template ${size(PIN_ROOM, spoken)} larger than the part there.`
        : 'Pins: no side of this board is straight and clear of the cutter; line the template up with the marks.',
      screws.length > 0
        ? `Screws: ${screws.map(({ where }) => where).join('; ')}.`
        : 'Screws: there is no spot that a later cut hides and no cutter meets; hold the template with double-sided tape.',
      'Stay on the waste side of the line: every notch in a template is copied to the part.',
    ]),
    ...(rows.length === 0
      ? []
      : [
          table(
            ['mark', 'meaning'],
            rows.map(({ mark, meaning }) => [mark, meaning]),
          ),
        ]),
  ];
}

/** The whole template small, with the frames of its sheets over it and their numbers. */
function mapFigure({ artwork, plan }: TiledTemplate): DrawnFigure {
  const { box } = artwork;
  const factor = Math.min(MOST[0] / (box.maxX - box.minX), MOST[1] / (box.maxY - box.minY));
  const lines = artwork.strokes.filter((one) => one.kind !== 'text');
  return {
    kind: 'drawn',
    said: 'How the sheets of the template lie, each with its number.',
    width: (box.maxX - box.minX) * factor,
    height: (box.maxY - box.minY) * factor + 2,
    draw: ([x, y]): readonly SheetEntity[] => {
      const by = [x - box.minX * factor, y - box.minY * factor] as const;
      const drawn = moved(lines, by, factor);
      const room = roomOf(drawn);
      return [
        ...drawn,
        ...plan.tiles.flatMap(({ frame, number }): SheetEntity[] => {
          const corner = (cx: number, cy: number) => [cx * factor + by[0], cy * factor + by[1]] as const;
          const [low, high] = [corner(frame.minX, frame.minY), corner(frame.maxX, frame.maxY)];
          return [
            path('visible', [low, [high[0], low[1]], high, [low[0], high[1]]], true),
            ...clearOfLines(
              room,
              letters(
                [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2],
                number === undefined ? 'blank' : String(number),
                { height: number === undefined ? 2.5 : 7, anchor: 'middle', bold: true },
              ),
            ),
          ];
        }),
      ];
    },
  };
}
