import type { Vec3 } from '../../frame/index.js';
import { type Keys, needed, onlyKeys, type Place, Problem, phraseOf, problemWith } from '../text/index.js';
import { type Cutting, cutOff, planeThrough } from './cutting.js';
import { ownPlace, ownSide, type Shaped, sideWord, sideWords } from './own-side.js';

const FORM = 'taper: { sides: right and back, to: 25, at: bottom }';

/** Sides that run in towards one end: in width in the outline, in thickness as a bevel. @throws Problem */
export function taper(cutting: Cutting, keys: Keys, shaped: Shaped, at: Place): Cutting {
  onlyKeys(keys, ['sides', 'to', 'at', 'starts'], 'a taper');
  const told = (key: string) => phraseOf(needed(keys, key, at, 'a taper', `write ${FORM}`), key);
  const sides = sideWords(told('sides')).map((side) => ownSide(shaped, side));
  const end = ownSide(shaped, sideWord(told('at')));
  if (end.axis !== 0)
    throw problemWith(
      told('at'),
      `a taper runs to an end of the board, '${end.side}' is none`,
      'name the end that gets thinner',
    );
  const toPhrase = told('to');
  const to = shaped.reckon.figure(toPhrase, 'length');
  const startsEntry = keys.get('starts');
  const starts = startsEntry && ownPlace(phraseOf(startsEntry, 'starts'), shaped);
  if (starts && starts.axis !== 0)
    throw problemWith(
      phraseOf(startsEntry!, 'starts'),
      'a taper starts somewhere along the board',
      `write starts: 100 below top`,
    );
  const from = starts?.at ?? end.whole - end.at;
  if ((end.at - from) * end.sign <= 0)
    throw new Problem(at, 5, 'the taper starts beyond its end', 'start it nearer to the other end');
  const planes = sides.map((side) => {
    if (side.axis === 0)
      throw problemWith(told('sides'), `'${side.side}' is an end of the board`, 'name long sides');
    const opposite = sides.some((other) => other.axis === side.axis && other.sign !== side.sign);
    const taken = (side.whole - to) / (opposite ? 2 : 1);
    if (taken < 0)
      throw problemWith(
        toPhrase,
        (say) => `a taper to ${say.fine(to)} adds wood: the board is ${say.fine(side.whole)} there`,
        'taper to less',
      );
    if (taken >= side.whole) throw problemWith(toPhrase, 'such a taper leaves no wood', 'leave more');
    const point = (along: number, off: number): Vec3 => {
      const p: [number, number, number] = [along, 0, 0];
      p[side.axis] = side.at - side.sign * off;
      return p;
    };
    const across: Vec3 = side.axis === 1 ? [0, 0, 1] : [0, 1, 0];
    const away: Vec3 = [0, side.axis === 1 ? side.sign : 0, side.axis === 2 ? side.sign : 0];
    return {
      id: `taper-${side.side}`,
      taken,
      plane: planeThrough(point(from, 0), point(end.at, taken), across, away),
    };
  });
  return planes.reduce((cut, { id, plane, taken }) => (taken === 0 ? cut : cutOff(cut, plane, id)), cutting);
}
