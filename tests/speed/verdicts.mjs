/** Loads a built copy of the program, and judges designs with it as `check` does. */
export async function verdictsBy(dist) {
  const of = (path) => import(new URL(path, dist).href);
  const [
    { gate, solidsOf, startKernel, volume },
    checks,
    { speaker },
    { readParameters },
    shops,
    { default: jig },
  ] = await Promise.all([
    of('src/solid/index.js'),
    of('src/checks/index.js'),
    of('src/length/index.js'),
    of('src/model/index.js'),
    of('src/shop/index.js'),
    of('models/jig.js'),
  ]);
  const shop = shops.builtInShop('mm');
  const jigDesign = jig.build(readParameters(jig, {}, 'mm'));
  /** What is found and every figure measured, as plain data. */
  return async (design) => {
    const kernel = await startKernel();
    try {
      const solids = solidsOf(kernel, design);
      gate(solids);
      const bench = checks.benchInShop(checks.benchOf(solids, speaker('mm')), shop, jigDesign);
      return {
        findings: checks.runChecks(bench).map(({ code, level, subjects, measured, limit, unit }) => ({
          key: `${level} ${code} ${subjects.join(' ')} ${unit}`,
          measured,
          limit,
        })),
        tenons: bench.tenons.map(({ joint: _, tenon: __, mortises, ...figures }) => ({
          ...figures,
          mortises: mortises.map(({ mortise: ___, cavity: ____, ...measured }) => measured),
        })),
        volumes: [...solids.boards.values()].map(({ own }) => volume(own)),
        glueUp: bench.glueUp.glueUp.steps.map(({ id, moving, still, travel }) => ({
          id,
          moving,
          still,
          travel,
        })),
      };
    } finally {
      kernel.dispose();
    }
  };
}
