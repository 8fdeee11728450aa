// A machine runs along every line of a template once: no mark lies on what is cut, routed or drilled, nor on another mark, straight or
// round. Read from the DXF text by another reader, its bulges turned into circles here.

import { describe, expect, test } from 'vitest';
import type { Board } from '../../src/board/index.js';
import { makeBoard } from '../../src/board/index.js';
import { templateOf } from '../../src/drawing/index.js';
import type { Template } from '../../src/drawing/template/index.js';
import { templateDxf } from '../../src/files/templates/template-dxf.js';
import { obround } from '../../src/profile/index.js';
import { made } from '../shop/made.js';
import { parseDxf } from './parse-dxf.js';

type Point = readonly [x: number, y: number];

interface Followed {
  readonly layer: string;
  readonly from: Point;
  readonly to: Point;
  /** Of a round stretch, which starts at an angle and runs counter-clockwise over another, radians. */
  readonly arc?: {
    readonly centre: Point;
    readonly radius: number;
    readonly start: number;
    readonly over: number;
  };
}

/** Lines that lie nearer than this, mm, are one to a machine; they share a stretch when it is longer than the other. */
const NEAR = 0.01;
const LONG = 0.05;

/** What a machine follows, as the file says it. */
function followed(template: Template): readonly Followed[] {
  const bytes = templateDxf(template, { units: 'mm', curves: 'arcs', failed: false });
  return parseDxf(bytes).entities.flatMap((one): readonly Followed[] => {
    const { layer } = one;
    if (!/^(CUT|POCKET|DRILL|MARK)$/.test(layer)) return [];
    if ('center' in one && 'radius' in one) {
      const { center, radius } = one as unknown as { center: { x: number; y: number }; radius: number };
      const at: Point = [center.x + radius, center.y];
      return [
        {
          layer,
          from: at,
          to: at,
          arc: { centre: [center.x, center.y], radius, start: 0, over: 2 * Math.PI },
        },
      ];
    }
    const { vertices, shape } = one as unknown as {
      readonly vertices: readonly { readonly x: number; readonly y: number; readonly bulge?: number }[];
      readonly shape?: boolean;
    };
    const ends = shape ? [...vertices.slice(1), vertices[0]!] : vertices.slice(1);
    return ends.map((end, i) => stretch(layer, vertices[i]!, end));
  });
}

/** A bulge is the tangent of a quarter of the angle: the centre lies on the chord's middle line. */
function stretch(
  layer: string,
  a: { x: number; y: number; bulge?: number },
  b: { x: number; y: number },
): Followed {
  const [from, to]: readonly Point[] = [
    [a.x, a.y],
    [b.x, b.y],
  ];
  const turn = 4 * Math.atan(a.bulge ?? 0);
  if (turn === 0) return { layer, from: from!, to: to! };
  const chord = Math.hypot(b.x - a.x, b.y - a.y);
  const radius = chord / 2 / Math.sin(Math.abs(turn) / 2);
  const toCentre = chord / 2 / Math.tan(turn / 2);
  const centre: Point = [
    (a.x + b.x) / 2 - ((b.y - a.y) / chord) * toCentre,
    (a.y + b.y) / 2 + ((b.x - a.x) / chord) * toCentre,
  ];
  const [x, y] = turn > 0 ? from! : to!;
  const start = Math.atan2(y - centre[1], x - centre[0]);
  return { layer, from: from!, to: to!, arc: { centre, radius, start, over: Math.abs(turn) } };
}

/** How long two stretches run on each other, mm. */
function shared(a: Followed, b: Followed): number {
  if (a.arc && b.arc) return sharedRound(a.arc, b.arc);
  return a.arc || b.arc ? 0 : sharedStraight(a, b);
}

function sharedRound(a: NonNullable<Followed['arc']>, b: NonNullable<Followed['arc']>): number {
  const apart = Math.hypot(a.centre[0] - b.centre[0], a.centre[1] - b.centre[1]);
  if (apart > NEAR || Math.abs(a.radius - b.radius) > NEAR) return 0;
  const whole = 2 * Math.PI;
  const begin = (((b.start - a.start) % whole) + whole) % whole;
  const overlap = (from: number) => Math.max(0, Math.min(a.over, from + b.over) - Math.max(0, from));
  return (overlap(begin) + overlap(begin - whole)) * a.radius;
}

function sharedStraight(a: Followed, b: Followed): number {
  const run = Math.hypot(a.to[0] - a.from[0], a.to[1] - a.from[1]);
  if (run < LONG) return 0;
  const [x, y] = [(a.to[0] - a.from[0]) / run, (a.to[1] - a.from[1]) / run];
  const told = [b.from, b.to].map((p): Point => {
    const [dx, dy] = [p[0] - a.from[0], p[1] - a.from[1]];
    return [dx * x + dy * y, dy * x - dx * y];
  });
  if (told.some(([, aside]) => Math.abs(aside) > NEAR)) return 0;
  const along = told.map(([at]) => at);
  return Math.min(run, Math.max(...along)) - Math.max(0, Math.min(...along));
}

/** Where a mark lies on another line, as words. */
function doubled(template: Template): readonly string[] {
  const all = followed(template);
  return all.flatMap((mark, i) =>
    mark.layer !== 'MARK'
      ? []
      : all
          .filter((other, k) => (other.layer !== 'MARK' ? true : k > i))
          .filter((other) => shared(mark, other) > LONG)
          .map(
            (other) =>
              `${template.board}: ${mark.arc ? 'a round' : 'a straight'} mark from ${mark.from} to ${mark.to} on ${other.layer} from ${other.from} to ${other.to}`,
          ),
  );
}

/** A board with round ends, and an opening as round as them in its middle. */
const round: Board = {
  ...makeBoard({
    id: 'round',
    blank: { length: 300, width: 80, thickness: 20 },
    outline: obround({ length: 300, width: 80, centre: [150, 40] }),
  }),
  openings: [{ id: 'grip', outline: obround({ length: 110, width: 32, centre: [150, 40] }) }],
};

const BOARDS: readonly Board[] = [
  ...made('stool').boards,
  ...made('stool', { treads: 2 }).boards,
  ...made('jig').boards,
  ...made('frame').boards,
].map(({ board }) => board);

describe.each([undefined, 24])('with a guide bush of %s', (bush) => {
  test('no mark lies on another line, straight or round', () => {
    const found = [round, ...BOARDS].flatMap((board) =>
      doubled(templateOf(board, { cutter: 8, ...(bush === undefined ? {} : { bush }), units: 'mm' })),
    );
    expect(found).toEqual([]);
  });
});

test('a mark laid on a line, or round on round, is found', () => {
  const template = templateOf(round, { cutter: 8, units: 'mm' });
  expect(doubled(template)).toEqual([]);
  const with_ = (entity: Template['entities'][number]): Template => ({
    ...template,
    entities: [...template.entities, entity],
  });
  const cut = template.entities.find((one) => one.kind === 'profile' && one.layer === 'CUT')!;
  // both straight sides and both round ends
  expect(doubled(with_({ ...cut, layer: 'MARK' }))).toHaveLength(4);
  const circle = { kind: 'circle', layer: 'MARK', centre: [40, 40], radius: 40 } as const;
  expect(doubled(with_(circle)).length).toBeGreaterThan(0);
  expect(doubled(with_({ ...circle, radius: 40.05 }))).toEqual([]);
});
