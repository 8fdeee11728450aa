import type { Design } from '../../assembly/index.js';
import type { Say } from '../../length/index.js';
import {
  clampPlan,
  holdingsOf,
  jigAtHand,
  provedGlueUp,
  type Shop,
  stagedByClamps,
  toldBy,
} from '../../shop/index.js';
import { measureJoints, type Solids } from '../../solid/index.js';
import type { Bench, Check } from '../bench/index.js';
import {
  assumptions,
  bridges,
  endInset,
  engagements,
  keepApart,
  looseBoards,
  mortiseDepth,
  movement,
  overlap,
  reaches,
  strength,
  templateCorners,
  tenonThickness,
  volumes,
  walls,
} from '../boards/index.js';
import type { Finding, Level } from '../finding/index.js';
import {
  captives,
  fastenings,
  grooves,
  inLine,
  layoutNotes,
  mitredEnds,
  shoulders,
  tenonFit,
} from '../joints/index.js';
import {
  assemblyPath,
  clampsAtHand,
  cuttersAtHand,
  dryRun,
  heldMortises,
  templatesLeft,
} from '../shop/index.js';

/** Every check, with the word shown while it runs. A new check is added here. */
export const CHECKS: readonly { readonly name: string; readonly check: Check }[] = [
  { name: 'fit of tenons', check: tenonFit },
  { name: 'mitred ends', check: mitredEnds },
  { name: 'mortises in line', check: inLine },
  { name: 'shoulders', check: shoulders },
  { name: 'walls', check: walls },
  { name: 'grooves', check: grooves },
  { name: 'panels in grooves', check: captives },
  { name: 'fastenings without glue', check: fastenings },
  { name: 'mortise depth', check: mortiseDepth },
  { name: 'end insets', check: endInset },
  { name: 'tenon thickness', check: tenonThickness },
  { name: 'overlaps', check: overlap },
  { name: 'boards held', check: looseBoards },
  { name: 'order of glue-up', check: assemblyPath },
  { name: 'clamps at hand', check: clampsAtHand },
  { name: 'bridges', check: bridges },
  { name: 'clearances', check: keepApart },
  { name: 'ranges', check: reaches },
  { name: 'bolts', check: engagements },
  { name: 'place of the cutter', check: assumptions },
  { name: 'templates', check: templatesLeft },
  { name: 'inside corners', check: templateCorners },
  { name: 'volumes', check: volumes },
  { name: 'strength and standing', check: strength },
  { name: 'movement', check: movement },
  { name: 'cutters at hand', check: cuttersAtHand },
  { name: 'layouts', check: layoutNotes },
  { name: 'holding of mortises', check: (bench) => (bench.held ? heldMortises(bench, bench.held) : []) },
  { name: 'dry run', check: (bench) => (bench.held ? dryRun(bench, bench.held) : []) },
];

const ORDER: Readonly<Record<Level, number>> = { error: 0, warning: 1, note: 2 };

/** Measures the joints once, for the checks and for the summary. */
export const benchOf = (solids: Solids, say: Say, bush?: number): Bench => ({
  solids,
  say,
  tenons: measureJoints(solids),
  ...(bush === undefined ? {} : { bush }),
});

export type BenchInShop = Bench & Required<Pick<Bench, 'held' | 'glueUp' | 'clamps' | 'told'>>;

/** The bench with the shop at hand: how each mortise is held, and the order of glue-up, each worked out once. */
export function benchInShop(bench: Bench, shop: Shop, jigDesign: Design): BenchInShop {
  const { design } = bench.solids;
  const jig = jigAtHand(jigDesign);
  const held = { ...holdingsOf(design, jig, shop, bench.say), jig, shop };
  const proved = provedGlueUp(bench.solids, shop.glue);
  const glueUp = { ...proved, glueUp: stagedByClamps(design, proved.glueUp, shop) };
  const told = toldBy(shop);
  return {
    ...bench,
    held,
    glueUp,
    told,
    clamps: clampPlan(design, glueUp.glueUp, shop.clamps),
  };
}

/** Runs every check; errors first, then warnings, then notes, each kind in the order of the checks. */
export const runChecks = (bench: Bench, progress?: (name: string) => void): readonly Finding[] =>
  worstFirst(
    CHECKS.flatMap(({ name, check }) => {
      progress?.(name);
      return check(bench);
    }),
  );

/** Errors, then warnings, then notes; each as they came. */
export const worstFirst = (found: readonly Finding[]): readonly Finding[] =>
  found.toSorted((a, b) => ORDER[a.level] - ORDER[b.level]);

/** True when cutting files must be held back. */
export const failed = (findings: readonly Finding[]): boolean =>
  findings.some((finding) => finding.level === 'error');
