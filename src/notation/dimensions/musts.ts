import type { Voice } from '../../errors.js';
import { formulaOf, type Quantity, type Scope, sidesOf } from '../formulas/index.js';
import { type MustLine, type PieceTree, type Problems, problemWith } from '../text/index.js';

/** What has to hold, in words. */
const MUST_BE: Readonly<Record<MustLine['relation'], string>> = {
  '<': 'less than',
  '<=': 'at most',
  '>': 'more than',
  '>=': 'at least',
  '=': 'exactly',
};

/** Puts what must hold and does not among the problems, each with its figures and what to do. */
export function holdMusts(tree: PieceTree, scope: Scope, problems: Problems): void {
  for (const { left, relation, right, cure } of tree.must)
    problems.during(() => {
      const told = { value: `${left.value} ${relation} ${right.value}`, at: left.at };
      const { holds, a, b } = sidesOf(formulaOf(told), scope, tree.units);
      if (holds) return;
      throw problemWith(
        told,
        (say) => {
          const [is, limit] = figuresIn(say, a, b);
          const named = /[a-z(]/i.test(right.value) ? `, '${right.value}'` : '';
          return `'${left.value}' is ${is}, and must be ${MUST_BE[relation]} ${limit}${named}`;
        },
        cure.value,
      );
    });
}

function figuresIn(say: Voice, a: Quantity, b: Quantity): readonly [string, string] {
  if (a.lengths === 1 && a.angles === 0) return say.fines(a.value, b.value) as unknown as [string, string];
  const word = ({ value, angles, lengths }: Quantity): string =>
    angles === 1 && lengths === 0 ? say.angle(value) : String(Number(value.toPrecision(6)));
  return [word(a), word(b)];
}
