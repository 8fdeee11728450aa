import { expect, test } from 'vitest';
import { jointKinds, jointTable } from '../../src/drawing/index.js';
import { onSolids } from '../checks/sample-design.js';
import { across, design, standing, table } from '../joinery/crowded-designs.js';

const OPTIONS = { units: 'dual', projection: 'first-angle' } as const;

test('a joint made alike many times is one kind, with every name in its table', async () => {
  const posts = Array.from({ length: 13 }, (_, i) =>
    standing(`upright-number-${i + 1}`, [300, 60, 30], [i * 100, 0, 40]),
  );
  const sill = { ...across('sill-of-the-long-side', [1300, 40, 60], [0, 0, 0]) };
  const of = design(
    [sill, ...posts],
    posts.map(({ board }) => ({ a: 'sill-of-the-long-side', b: board.id })),
  );
  await onSolids(of, (solids) => {
    const [kind, ...others] = jointKinds(solids);
    expect(others).toEqual([]);
    const said = jointTable(solids, kind!, OPTIONS).flat().join(' ');
    for (const { id } of of.joints) expect(said).toContain(id);
  });
});

test('the table of a mitred tenon tells its angle and its gap, and kinds that are mitred otherwise stand apart', async () => {
  const of = table();
  await onSolids(of, (solids) => {
    const kinds = jointKinds(solids);
    const said = jointTable(solids, kinds[0]!, OPTIONS).flat().join(' ');
    expect(said).toContain('mitred 45° out of square');
  });
});
