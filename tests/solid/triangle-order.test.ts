import { expect, test } from 'vitest';
import { frame } from '../../src/frame/index.js';
import { circle, rectangle, regionOf } from '../../src/profile/index.js';
import { featureEdges, meshOf, prism, startKernel } from '../../src/solid/index.js';

test('the triangles of a body come in one order, whatever its cutters were made for before', async () => {
  const kernel = await startKernel();
  const stock = () =>
    kernel.keep(prism(kernel, regionOf(rectangle({ length: 73, width: 41 })), 0, 11, undefined));
  const hole = (diameter: number, x: number) =>
    kernel.keep(
      prism(kernel, regionOf(circle({ diameter })), -1, 12, frame([x, 3, 0], [0, 0, 1], [1, 0, 0])),
    );
  const cut = (first: number, second: number) => {
    // a shape is made once: the order these two are first asked for is the order the kernel numbers them in
    hole(first, 0);
    hole(second, 0);
    return kernel.keep(
      kernel.wasm.Manifold.difference([
        stock(),
        hole(Math.min(first, second), -20),
        hole(Math.max(first, second), 20),
      ]),
    );
  };
  const [one, other] = [cut(7.13, 9.17), cut(9.171, 7.131)];
  try {
    // the kernel itself orders them by their age
    const runs = [one, other].map((body) => [...body.getMesh().triVerts]);
    expect(runs[0]).not.toEqual(runs[1]);
    expect(runs[0]!.toSorted()).toEqual(runs[1]!.toSorted());
    expect([...meshOf(one).triangles]).toEqual([...meshOf(other).triangles]);
    expect([...featureEdges(one).edges]).toEqual([...featureEdges(other).edges]);
  } finally {
    kernel.dispose();
  }
});
