import { expectedVolume, mitredIn, volume } from '../../solid/index.js';
import type { Bench } from '../bench/index.js';
import { type Finding, MEASURED } from '../finding/index.js';

/** A finished board holds what its data say: a cavity that meets another or breaks out shows here. */
export const volumes = (bench: Bench): readonly Finding[] =>
  [...bench.solids.boards.values()].flatMap(({ id, board, own }): Finding[] => {
    const expected = expectedVolume(board, mitredIn(bench.solids.design.joints, id));
    if (!expected) return [];
    const off = volume(own) - expected.volume;
    if (Math.abs(off) <= expected.allowance) return [];
    const { say } = bench;
    return [
      {
        code: 'volume-differs',
        level: 'error',
        subjects: [id],
        measured: off,
        limit: expected.allowance,
        unit: 'mm³',
        message: `${id} holds ${say.volume(Math.abs(off))} ${off > 0 ? 'more' : 'less'} wood than its dimensions say: cavities run into each other, or break out of the wood`,
        remedy: 'move or shorten the mortises, holes or slots that run into each other',
        basis: MEASURED,
      },
    ];
  });
