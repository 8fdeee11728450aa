// Loaded ahead of the program: an engine whose sines, powers and the like end in another last digit.
import process from 'node:process';

const by = Number(process.env.NUDGED_BY);
// not the logarithm: the font's own library counts tables by it, and whole powers of two are right on every engine
const NUDGED = ['sin', 'cos', 'tan', 'asin', 'acos', 'atan', 'atan2', 'pow', 'exp', 'hypot', 'cbrt'];
for (const name of NUDGED) {
  const own = Math[name];
  let turn = 0;
  Math[name] = (...all) => {
    const exact = own(...all);
    turn += 1;
    // up, down and not at all: an engine is not off in one direction alone; whole results are the same everywhere
    return Number.isInteger(exact) ? exact : exact * (1 + ((turn % 3) - 1) * by);
  };
}
