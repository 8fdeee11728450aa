/**
 * The usual figures of tenon stock, cut lists and layouts; each can be overridden where it is used. Common practice, no
 * source, unless a source is named. Lengths mm.
 */
export const STOCK_PRACTICE = {
  /** Slots of one cutter in face grain and in end grain that differ by more than this want two tenons, or a test in both. */
  slotDifference: 0.1,
  /** Shortest strip that is planed, routed or sawn lengthwise (12 in). */
  stripLength: 300,
  /** Longest strip that is still handy at the router table. */
  stripLongest: 600,
  /** Held in the hand or the clamp at the end of a strip, and left over. */
  grip: 75,
  /** Spare tenons as a share of those needed. */
  spares: 0.15,
  /** Length added to one of the two mortises so that a rail can be nudged level (1/32 in). */
  alignmentSlack: 0.8,
  /** Grooves on each cheek that let air and glue out. */
  groove: { width: 3, depth: 0.8, wideTenon: 50 },
  /** Kerf taken when the shop file does not give one. */
  kerf: 3,
  /** Taken off every edge of a sheet, kerf included, so that parts start from a true edge. */
  sheetTrim: 10,
  /** Taken off each end of lumber, kerf included: checks and dirt. */
  lumberEndTrim: 25,
  /** Taken off each edge of lumber, kerf included: a straight edge to work from. */
  lumberEdgeTrim: 3,
  /** The sheet taken when the shop file names none of the material: the usual size of plywood. */
  sheet: { length: 2440, width: 1220 },
  /** A sheet is sold by a thickness it does not measure; nearer than this it is the one meant. */
  sheetThickness: 1,
  /** Bought beyond what the boards need, for knots, sapwood and offcuts: a fifth. */
  waste: 0.2,
  /** Wood for jointing each glue line when a wide board is glued up from strips. */
  glueLine: 3,
  /** Length of test blank a test cut takes beyond its mortise; and its width, where the width is not what is held. */
  testBlankBeside: 30,
} as const;
