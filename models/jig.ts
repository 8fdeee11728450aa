import { assemble } from '../src/assembly/index.js';
import { defineModel } from '../src/model/index.js';
import { derived, explode, notes } from './jig/derived.js';
import { fixings } from './jig/fixings.js';
import { layOut } from './jig/layout.js';
import { assumptions, engagements, headsBelow, keepApart } from './jig/limits.js';
import { poses, reaches } from './jig/movement.js';
import { parameters } from './jig/parameters.js';
import { plate } from './jig/plate.js';
import { putTogether } from './jig/put-together.js';
import { rail, SIDES } from './jig/rails.js';
import { router } from './jig/router.js';
import { sized } from './jig/sizes.js';

/**
 * A plate under a plunge router, and two rails below it that grip the work between them.
 *
 * The origin is the cutter's axis on the sliding face: x along the rails and the mortise, y across the work, z up.
 */
export default defineModel({
  name: 'jig',
  title: 'Two-rail mortising jig',
  summary: 'A plate under a plunge router with two rails that grip the work, for mortises along its edge.',
  parameters,
  complete: sized,
  build(given, tools) {
    const values = sized(given, tools);
    const l = layOut(values, tools.units);
    const rails = SIDES.map((side) => rail(side, values, l));
    const held = rails.map((each) => fixings(each, values, l));
    const top = router(values, l);
    const screws = top.filter((piece) => piece.kind === 'screw');
    return assemble({
      name: 'jig',
      title: 'Two-rail mortising jig',
      cutter: values.cutter,
      boards: [plate(values, l), ...rails],
      hardware: [...held.flat(), ...top],
      mechanism: {
        poses: poses(l, rails, held),
        keepApart: [...keepApart(values, held), ...headsBelow(screws)],
        engagements: engagements(l, held, screws),
        reaches: reaches(values),
        assumptions: assumptions(l),
      },
      derived: derived(l),
      explode: explode(held.flat(), top),
      notes: notes(values, l),
      putTogether: putTogether(values, l, held.flat()),
    });
  },
});
