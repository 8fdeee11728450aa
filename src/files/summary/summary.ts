import type { Derived, Design, HardwareKind } from '../../assembly/index.js';
import { type Blank, type Board, type FaceId, fenceDistance } from '../../board/index.js';
import type { Finding } from '../../checks/index.js';
import type { ParameterValue } from '../../model/index.js';
import type { Ranges } from '../../range/index.js';
import type { ShopPapers } from '../../shop/index.js';
import type { MortiseMeasure, TenonMeasure } from '../../solid/index.js';
import { massOf } from '../../tables/index.js';
import { type BoardFiles, type PapersSummary, papersSummary } from './papers-summary.js';

/** A file as it was written. */
export interface WrittenFile {
  /** Below the design's folder, parts joined by `/`. */
  readonly path: string;
  readonly bytes: number;
  /** Hexadecimal. */
  readonly sha256: string;
}

/** What the summary is made from. */
export interface SummaryParts {
  readonly design: Design;
  /** Of this program. */
  readonly version: string;
  readonly parameters: Readonly<Record<string, ParameterValue>>;
  /** Of the finished boards by their ids, measured on the solids, mm³. */
  readonly volumes: ReadonlyMap<string, number>;
  readonly tenons: readonly TenonMeasure[];
  readonly findings: readonly Finding[];
  /** For which dimensions it stays sound; undefined when it was not found out. */
  readonly ranges?: Ranges | undefined;
  readonly files: readonly WrittenFile[];
  /** Paths of each board's own files, by its id; what was not written is left out. */
  readonly boardFiles: ReadonlyMap<string, BoardFiles>;
  /** Undefined when they were not asked for. */
  readonly papers: ShopPapers | undefined;
  readonly revision: string;
  /** Files of each piece made to hold the work, by its id. */
  readonly aidFiles: ReadonlyMap<string, BoardFiles>;
}

/** The report of a run, lengths mm: what `summary.json` holds. */
export interface Summary {
  readonly design: string;
  readonly title: string;
  readonly version: string;
  /** Of parameters, program and shop: on every paper. */
  readonly revision: string;
  readonly parameters: Readonly<Record<string, ParameterValue>>;
  readonly boards: readonly BoardSummary[];
  /** One entry for each tenon; a joint of two tenons has two with the same id. */
  readonly joints: readonly JointSummary[];
  readonly derived: readonly Derived[];
  readonly hardware: readonly {
    readonly id: string;
    readonly kind: HardwareKind;
    readonly name: string;
    readonly bought: boolean;
  }[];
  /** Panels held in grooves, and boards held without glue, as the design asks for them; left out when there are none. */
  readonly captives?: Design['captives'];
  readonly fastenings?: Design['fastenings'];
  readonly notes: readonly string[];
  /** For which dimensions the design stays sound; left out when it was not found out. */
  readonly ranges?: RangesSummary;
  readonly findings: readonly Finding[];
  /** Everything the papers of the bench set, as data; null when they were not asked for. */
  readonly shop: PapersSummary | null;
  readonly files: readonly WrittenFile[];
}

export interface BoardSummary {
  readonly id: string;
  readonly name: string;
  readonly material: string;
  readonly blank: Blank;
  /** Left out when it has none. */
  readonly grooves?: readonly GrooveSummary[];
  readonly volumeMm3: number;
  readonly massKg: number;
  /** Paths; null when the file was not written. */
  readonly solid: string | null;
  readonly template: string | null;
}

export interface GrooveSummary {
  readonly id: string;
  readonly face: FaceId;
  /** The face its fence follows, and how far from it the near wall stands; 0 for a rebate. */
  readonly from: FaceId;
  readonly distance: number;
  readonly width: number;
  readonly depth: number;
  readonly length: number;
  readonly stopped: readonly ('start' | 'end')[];
}

export interface JointSummary {
  readonly id: string;
  readonly a: string;
  readonly b: string;
  /** Measured on its solid. */
  readonly tenon: {
    readonly id: string;
    readonly thickness: number;
    readonly width: number;
    readonly length: number;
  };
  /** Measured on the cavities in the two boards, a's first. */
  readonly mortises: readonly [MortiseSummary, MortiseSummary];
}

export interface MortiseSummary {
  readonly board: string;
  readonly width: number;
  readonly length: number;
  readonly depth: number;
  readonly bottomClearanceMm: number;
  readonly cheekClearanceMm: number;
}

/** Values mm, degrees or counts. */
export interface RangesSummary {
  /** Full verdicts the figures stand on. */
  readonly tried: number;
  readonly alone: readonly DimensionRange[];
  /** All dimensions at once, and how many random designs within these limits were tried. */
  readonly together?: { readonly tried: number; readonly limits: readonly DimensionRange[] };
}

export interface DimensionRange {
  /** camelCase name of the parameter. */
  readonly dimension: string;
  readonly from: number;
  readonly to: number;
}

const rangesSummary = ({ tried, alone, together }: Ranges): RangesSummary => ({
  tried,
  alone: alone.map(({ dimension, span }) => ({ dimension: dimension.name, ...span })),
  ...(together && {
    together: {
      tried: together.tried,
      limits: together.limits.map(({ dimension, from, to }) => ({ dimension: dimension.name, from, to })),
    },
  }),
});

/**
 * The report of a run as plain data.
 *
 * Masses are volume × the material's density (12 % moisture content for solid wood).
 *
 * @throws InputError for a material without a density
 * @throws RangeError when a board's volume was not measured: a fault of the program
 */
export function summaryOf(parts: SummaryParts): Summary {
  const { design } = parts;
  return {
    design: design.name,
    title: design.title,
    version: parts.version,
    revision: parts.revision,
    parameters: parts.parameters,
    boards: design.boards.map(({ board }): BoardSummary => {
      const volumeMm3 = parts.volumes.get(board.id);
      if (volumeMm3 === undefined) throw new RangeError(`the volume of board ${board.id} was not measured`);
      return {
        id: board.id,
        name: board.name,
        material: board.material,
        blank: board.blank,
        ...(board.grooves.length === 0 ? {} : { grooves: groovesOf(board) }),
        volumeMm3,
        massKg: massOf(volumeMm3, board.material),
        solid: parts.boardFiles.get(board.id)?.solid ?? null,
        template: parts.boardFiles.get(board.id)?.template ?? null,
      };
    }),
    joints: parts.tenons.map(
      ({ joint, tenon, thickness, width, length, mortises: [a, b] }): JointSummary => ({
        id: joint.id,
        a: joint.a,
        b: joint.b,
        tenon: { id: tenon.id, thickness, width, length },
        mortises: [mortiseSummary(a), mortiseSummary(b)],
      }),
    ),
    derived: design.derived,
    hardware: design.hardware.map(({ id, kind, name, bought }) => ({ id, kind, name, bought })),
    ...(design.captives && { captives: design.captives }),
    ...(design.fastenings && { fastenings: design.fastenings }),
    notes: design.notes,
    findings: parts.findings,
    ...(parts.ranges && { ranges: rangesSummary(parts.ranges) }),
    shop: parts.papers ? papersSummary(parts.papers, parts.aidFiles) : null,
    files: parts.files,
  };
}

const groovesOf = (board: Board): readonly GrooveSummary[] =>
  board.grooves.map((groove) => {
    const { id, face, from, width, depth, length, stopped } = groove;
    const distance = groove.rebate ? 0 : fenceDistance(board, groove);
    return { id, face, from, distance, width, depth, length, stopped };
  });

const mortiseSummary = (measure: MortiseMeasure): MortiseSummary => ({
  board: measure.board,
  width: measure.width,
  length: measure.length,
  depth: measure.depth,
  bottomClearanceMm: measure.bottomClearance,
  cheekClearanceMm: measure.cheekClearance,
});
