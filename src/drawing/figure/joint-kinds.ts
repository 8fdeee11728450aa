import type { Mortise } from '../../board/index.js';
import { type Joint, shortBy, type Tenon } from '../../joinery/index.js';
import { printFit, rulesOf, trimmed } from '../../length/index.js';
import type { Solids } from '../../solid/index.js';
import type { DrawingOptions } from '../board/index.js';
import { fitRows, sayIn, sizeRows, toolRows } from '../sheet/index.js';

/** Sizes that differ by less are one when joints are told alike, mm. */
const ALIKE = 0.1;

/** Joints that are made alike, with every joint each stands for. */
export interface JointKind {
  readonly joint: Joint;
  readonly alike: readonly Joint[];
}

/** The joints of a design, those with the same tenons, mortises and boards' thicknesses taken together. */
export function jointKinds(solids: Solids): readonly JointKind[] {
  const kinds = new Map<string, Joint[]>();
  for (const joint of solids.design.joints) {
    const figures = joint.tenons.flatMap((tenon) => {
      const [a, b] = mortisesOf(solids, joint, tenon);
      const mitres = [tenon.mitreA?.angleDeg ?? 0, tenon.mitreB?.angleDeg ?? 0];
      return [
        ...[tenon.thickness, tenon.width, tenon.intoA, tenon.intoB, ...mitres],
        ...[a.depth, b.depth, a.width, a.length],
      ];
    });
    const thick = [joint.a, joint.b].map((id) => solids.boards.get(id)!.board.blank.thickness);
    const key = [...figures, ...thick].map((figure) => Math.round(figure / ALIKE)).join('/');
    kinds.set(key, [...(kinds.get(key) ?? []), joint]);
  }
  return [...kinds.values()].map((alike) => ({ joint: alike[0]!, alike }));
}

/** The mortises of a tenon in both boards. */
export function mortisesOf(solids: Solids, joint: Joint, tenon: Tenon): readonly [a: Mortise, b: Mortise] {
  const find = (id: string) => solids.boards.get(id)!.board.mortises.find((one) => one.tenon === tenon.id)!;
  return [find(joint.a), find(joint.b)];
}

/** Sizes of a joint's mortises and tenons and their fit, as rows of words. */
export function jointTable(
  solids: Solids,
  { joint, alike }: JointKind,
  { units }: DrawingOptions,
): readonly (readonly string[])[] {
  const tenon = joint.tenons[0]!;
  const [a, b] = mortisesOf(solids, joint, tenon);
  const say = (mm: number) => sizeRows(mm, units).join(' ');
  const tool = (mm: number) => toolRows(mm, units).join(' ');
  const told = (mm: number) => printFit(mm, { units: rulesOf(units)[0]! });
  const mortise = (board: string, one: Mortise) => [
    `mortise in ${board}`,
    `${tool(one.width)} × ${say(one.length)}, ${say(one.depth)} deep`,
  ];
  return [
    ['what', 'size'],
    mortise(joint.a, a),
    mortise(joint.b, b),
    [
      'tenon',
      `${fitRows(tenon.thickness, units).join(' ')} × ${say(tenon.width)} × ${say(tenon.length)}, ${joint.tenons.length} in each joint`,
    ],
    ...mitreRows(joint, tenon, { units }),
    [
      'air',
      `${told(joint.fit.cheek)} a cheek, ${told(joint.fit.edge)} over both edges, ${told(joint.fit.end)} an end`,
    ],
    ['cutter', tool(joint.cutter)],
    ['joints', alike.map((one) => one.id).join(', ')],
  ];
}

const mitreRows = (
  { a, b }: Joint,
  tenon: Tenon,
  { units }: Pick<DrawingOptions, 'units'>,
): readonly (readonly string[])[] =>
  (
    [
      [a, tenon.mitreA],
      [b, tenon.mitreB],
    ] as const
  ).flatMap(([board, mitre]) => {
    if (!mitre) return [];
    const say = sayIn(units);
    return [
      [
        `its end in ${board}`,
        `mitred ${trimmed(mitre.angleDeg, 1)}° out of square, long point ${say(shortBy(tenon, mitre))} beyond the short one, a gap of ${say(mitre.gap)} to the tenon it meets`,
      ],
    ];
  });
