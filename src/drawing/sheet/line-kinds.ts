/**
 * What a line of a sheet stands for; its width and dashes follow from that.
 *
 * ISO 128-2: two widths in the ratio 2 : 1 (here 0.35 and 0.18 mm, the finest pair that home printers hold), hatching and tables one
 * step finer; 01.2 continuous wide for visible edges, 02.1 dashed narrow for hidden ones, 04.1 long-dash-dot narrow for centre lines,
 * 04.2 long-dash-dot wide for cutting planes, 05.1 long-dash-double-dot narrow for neighbouring parts and the blank.
 * Lines of full-size templates are 0.2 mm: what is cut or filed to a line comes out no truer than the line is fine.
 */
export const LINE_KINDS = {
  visible: { width: 0.35, dashes: [] },
  hidden: { width: 0.18, dashes: [1.6, 0.8] },
  centre: { width: 0.18, dashes: [4, 0.8, 0.5, 0.8] },
  'cutting plane': { width: 0.35, dashes: [4, 0.8, 0.5, 0.8] },
  neighbour: { width: 0.18, dashes: [4, 0.8, 0.5, 0.8, 0.5, 0.8] },
  dimension: { width: 0.18, dashes: [] },
  hatching: { width: 0.13, dashes: [] },
  table: { width: 0.13, dashes: [] },
  template: { width: 0.2, dashes: [] },
  frame: { width: 0.7, dashes: [] },
} as const satisfies Record<string, { readonly width: number; readonly dashes: readonly number[] }>;

/** Width of a stroke of grain in a toned picture, mm. */
export const GRAIN = 0.1;

export type LineKind = keyof typeof LINE_KINDS;
