import type { GapCode } from '../../assembly/index.js';
import type { LimitCode } from '../../shop/index.js';
import { STRENGTH_BASES, type StrengthCode } from '../../strength/index.js';
import { BOARD_KINDS, GAP_KINDS } from './board-kinds.js';
import type { FindingKind, Level } from './finding-kind.js';
import { JOINT_KINDS } from './joint-kinds.js';
import { LIMIT_KINDS, SHOP_KINDS } from './shop-kinds.js';
import { STRENGTH_KINDS } from './strength-kinds.js';

export type { FindingKind, Level };

/** Stable names of everything a check can find. */
export type FindingCode =
  | keyof typeof BOARD_KINDS
  | keyof typeof JOINT_KINDS
  | keyof typeof SHOP_KINDS
  | GapCode
  | StrengthCode
  | `cannot-be-cut-${LimitCode}`
  | `held-another-way-${LimitCode}`;

const limited = Object.entries(LIMIT_KINDS) as [LimitCode, (typeof LIMIT_KINDS)[LimitCode]][];

/** Every kind of finding: what it means, its limit, what the limit rests on, and what ends it. */
export const FINDING_KINDS = {
  ...BOARD_KINDS,
  ...GAP_KINDS,
  ...JOINT_KINDS,
  ...SHOP_KINDS,
  ...Object.fromEntries(
    Object.entries(STRENGTH_KINDS).map(([code, kind]) => [
      code,
      { ...kind, basis: STRENGTH_BASES[code as StrengthCode] },
    ]),
  ),
  ...Object.fromEntries(
    limited.map(([code, kind]) => [
      `cannot-be-cut-${code}`,
      {
        level: 'error',
        ...kind,
        meaning: `${kind.meaning} The mortise cannot be cut with the router and jig at hand.`,
      },
    ]),
  ),
  ...Object.fromEntries(
    limited.map(([code, kind]) => [
      `held-another-way-${code}`,
      { level: 'note', ...kind, meaning: `${kind.meaning} The mortise is cut another way.` },
    ]),
  ),
} as Readonly<Record<FindingCode, FindingKind>>;
