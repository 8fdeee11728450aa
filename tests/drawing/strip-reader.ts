import type { CutPicture } from '../../src/drawing/figure/cut-picture.js';
import {
  type CircleStroke,
  type LineStroke,
  type Stroke,
  strokesOf,
  type TextStroke,
} from '../../src/drawing/index.js';

/** A cut as its small picture tells it. */
export interface ReadCut {
  readonly number: number;
  readonly direction: 'rip' | 'crosscut';
  /** As it is written. */
  readonly setting: string;
  /** Undefined where nothing is written: waste. */
  readonly near: Left | undefined;
  readonly far: Left | undefined;
}

/** The cut that takes a piece up; or a mark, in bold on what is done. */
export type Left = { readonly next: number } | { readonly mark: string; readonly done: boolean };

const middleOf = ({ at, height }: TextStroke) => [at[0], at[1] + height / 2] as const;

/** The cuts of a picture, read from its rings, letters and lines alone. */
export function readPicture(picture: CutPicture): readonly ReadCut[] {
  const strokes = strokesOf(picture.draw([0, 0]));
  const texts = strokes.filter((one): one is TextStroke => one.kind === 'text');
  const circles = strokes.filter((one): one is CircleStroke => one.kind === 'circle');
  const inside = ({ centre, radius }: CircleStroke) =>
    texts.find((text) => {
      const [x, y] = middleOf(text);
      return Math.hypot(x - centre[0], y - centre[1]) < radius / 2;
    })!;
  const heavy = circles.filter(({ line }) => line === 'visible');
  const loose = texts.filter((text) => !circles.some((ring) => inside(ring) === text));
  const settings = heavy.map((ring) => {
    const beside = loose.filter(
      (text) => Math.abs(middleOf(text)[1] - ring.centre[1]) < 0.1 && text.at[0] > ring.centre[0],
    );
    return beside.toSorted((a, b) => a.at[0] - b.at[0])[0]!;
  });
  const labels = [
    ...circles
      .filter(({ line }) => line === 'table')
      .map((ring) => ({ at: ring.centre, left: { next: Number(inside(ring).text) } })),
    ...loose
      .filter((text) => !settings.includes(text))
      .map((text) => ({ at: middleOf(text), left: { mark: text.text, done: text.bold === true } })),
  ];
  const numberOf = (ring: CircleStroke) => Number(inside(ring).text);
  if (!strokes.some((one) => 'line' in one && one.line === 'frame'))
    return trued(strokes, heavy, numberOf, settings, labels[0]!.left);
  const saw = strokes.find((one): one is LineStroke => one.kind === 'line' && one.line === 'visible')!;
  const rip = saw.from[1] === saw.to[1];
  const line = rip ? saw.from[1] : picture.width / 2;
  const side = (near: boolean) => labels.find(({ at }) => at[rip ? 1 : 0] < line === near)?.left;
  return [
    {
      number: numberOf(heavy[0]!),
      direction: rip ? 'rip' : 'crosscut',
      setting: settings[0]!.text,
      near: side(true),
      far: side(false),
    },
  ];
}

/** A picture of stock trued all round: each ring stands on the side that is taken off. */
function trued(
  strokes: readonly Stroke[],
  rings: readonly CircleStroke[],
  numberOf: (ring: CircleStroke) => number,
  settings: readonly TextStroke[],
  last: Left,
): readonly ReadCut[] {
  const dashed = strokes.find((one) => one.kind === 'polyline' && one.line === 'hidden');
  if (dashed?.kind !== 'polyline') throw new Error('nothing is trimmed');
  const [xs, ys] = [dashed.points.map(([x]) => x), dashed.points.map(([, y]) => y)];
  const count = Math.max(...rings.map(numberOf));
  return rings
    .map((ring, i): ReadCut => {
      const number = numberOf(ring);
      const [x, y] = ring.centre;
      const rip = y > Math.max(...ys) || y < Math.min(...ys);
      const low = rip ? y < Math.min(...ys) : x < Math.min(...xs);
      const rest = number === count ? last : { next: number + 1 };
      return {
        number,
        direction: rip ? 'rip' : 'crosscut',
        setting: settings[i]!.text,
        near: low ? undefined : rest,
        far: low ? rest : undefined,
      };
    })
    .toSorted((a, b) => a.number - b.number);
}
