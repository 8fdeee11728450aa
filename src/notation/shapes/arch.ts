import { type Keys, needed, onlyKeys, type Place, Problem, phraseOf, problemWith } from '../text/index.js';
import { type Cutting, runToward } from './cutting.js';
import { ownSide, type Shaped, sideWord } from './own-side.js';

/**
 * An arch cut into a side between two feet: a bow, or with `radius` a straight cut with round corners.
 *
 * @throws Problem
 */
export function arch(cutting: Cutting, keys: Keys, shaped: Shaped, at: Place): Cutting {
  onlyKeys(keys, ['side', 'high', 'feet', 'radius'], 'an arch');
  const form = 'write arch: { side: bottom, high: 30, feet: 60 }';
  const told = (key: string) => phraseOf(needed(keys, key, at, 'an arch', form), key);
  const length = (key: string) => shaped.reckon.figure(told(key), 'length');
  const { axis, sign } = ownSide(shaped, sideWord(told('side')));
  if (axis === 2)
    throw problemWith(
      told('side'),
      'an arch is sawn through the thickness',
      'name an end or an edge of the board',
    );
  const [high, feet] = [length('high'), length('feet')];
  if (high === 0) return cutting;
  const found = runToward(cutting, axis, sign);
  if (found < 0)
    throw problemWith(told('side'), 'nothing of the board runs straight there any more', 'arch another side');
  const from = cutting.corners[found]!;
  const to = cutting.corners[(found + 1) % cutting.corners.length]!;
  const run = Math.hypot(to.x - from.x, to.y - from.y);
  const span = run - 2 * feet;
  if (high < 0 || feet < 0 || span <= 0)
    throw new Problem(
      at,
      4,
      (say) => `feet of ${say.fine(feet)} leave ${say.fine(span)} of ${say.fine(run)} for the arch`,
      'make the feet shorter',
    );
  const [ux, uy] = [(to.x - from.x) / run, (to.y - from.y) / run];
  const on = (along: number, deep: number) => ({
    x: from.x + ux * along - uy * deep,
    y: from.y + uy * along + ux * deep,
  });
  const [a, b] = [on(feet, 0), on(run - feet, 0)];
  const radiusEntry = keys.get('radius');
  if (radiusEntry) {
    const radius = shaped.reckon.figure(phraseOf(radiusEntry, 'radius'), 'length');
    const corners = [a, { ...on(feet, high), radius }, { ...on(run - feet, high), radius }, b];
    return { ...cutting, corners: cutting.corners.toSpliced(found + 1, 0, ...corners) };
  }
  if (high > span / 2)
    throw new Problem(
      at,
      4,
      (say) => `an arch ${say.fine(high)} high is more than a half circle over ${say.fine(span)}`,
      'make it lower or the feet shorter',
    );
  return {
    ...cutting,
    corners: cutting.corners.toSpliced(found + 1, 0, a, b),
    bows: [...cutting.bows, { from: a, to: b, bulge: (-2 * high) / span }],
  };
}
