import { describe, expect, test } from 'vitest';
import { assemble } from '../../src/assembly/index.js';
import { builtInShop, orderOfWork, type Shop, uncutMortises } from '../../src/shop/index.js';
import { carded, made } from './made.js';
import { mitredFrame, turnedSeat } from './turned-joints.js';

const SHOP = builtInShop('mm');
const plunging = (plungeTravel: number): Shop => ({ ...SHOP, router: { ...SHOP.router, plungeTravel } });

const DESIGNS = [
  ['a frame', made('frame')],
  ['a mitred frame', mitredFrame()],
  ['a seat on turned legs', turnedSeat({ legs: [{ at: [110, 120], turnDeg: 31 }] })],
] as const;

describe.each(DESIGNS)('%s, with a router that plunges too little', (_, design) => {
  const least = Math.min(...design.boards.flatMap(({ board }) => board.mortises.map(({ depth }) => depth)));
  const { cards, holdings, uncut } = carded(design, plunging(least - 1));
  const all = design.boards.flatMap(({ board }) => board.mortises.map(({ id }) => `${board.id} ${id}`));

  test('has every mortise told as one that cannot be cut, with its limit and its cure', () => {
    expect(uncut.map(({ board, mortise }) => `${board} ${mortise.id}`).toSorted()).toEqual(all.toSorted());
    for (const { code, measured, limit, message, remedy } of uncut) {
      expect(code).toBe('cannot-be-cut-plunge-travel');
      expect(measured).toBeGreaterThan(limit);
      expect(message).toContain('cannot be cut');
      expect(remedy).toContain('shallower');
    }
  });

  test('has no card and no step for any of them', () => {
    expect(cards).toEqual([]);
    expect(orderOfWork(design, holdings, cards).steps.filter(({ kind }) => kind === 'mortise')).toEqual([]);
  });

  test('is cut whole once the router plunges as deep as is told to be needed', () => {
    const deepest = Math.max(...uncut.map(({ measured }) => measured));
    const cured = carded(design, plunging(deepest));
    expect(cured.uncut).toEqual([]);
    expect(cured.cards.flatMap(({ cuts }) => cuts)).toHaveLength(all.length);
  });
});

test('a mortise that leans from its face, with no face square to it, is cut by no card and in no step', () => {
  const bare = made('stool').boards.map(({ board, place }) => ({ board: { ...board, mortises: [] }, place }));
  const joined = (axis: 'along a' | 'face') =>
    assemble({
      name: 'along',
      title: 'Along',
      cutter: 8,
      boards: bare,
      joints: [{ a: 'stretcher', b: 'left-side', options: { cutter: 8, axis, depths: { stretcher: 12 } } }],
    });
  const design = joined('along a');
  const { cards, holdings, uncut } = carded(design);
  expect(uncut.map(({ board, code }) => [board, code])).toEqual([['left-side', 'mortise-without-mouth']]);
  const cut = orderOfWork(design, holdings, cards).steps.filter(({ kind }) => kind === 'mortise');
  expect(cut.map(({ board }) => board)).toEqual(['stretcher']);
  // the remedy: the axis square to the face
  expect(uncut[0]!.remedy).toContain('square to the face');
  const cured = joined('face');
  expect(uncutMortises(cured, carded(cured).holdings)).toEqual([]);
});
