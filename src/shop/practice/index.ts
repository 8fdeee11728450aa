export { GLUE_UP_PRACTICE } from './glue-up-practice.js';
export {
  BEARING_DOWN,
  CHIP_AIR,
  CLAMP_ROOM,
  COLLAR_AIR,
  COLLET_GRIP_DIAMETERS,
  CUTTER_AIR,
  DEPTH_BLOCK,
  GUIDE,
  GUIDE_WOOD,
  HOLD,
  HORN_STEP,
  LONGEST_HORN,
  MARKS_APART,
  STEEPEST_WEDGE_DEG,
  STOP_FOOT,
  SUPPORT_WIDTH,
  TEMPLATE_BEYOND,
  WEDGE_BEYOND,
  WEDGE_THIN,
  WOOD_AIR,
} from './holding-practice.js';
export { STOCK_PRACTICE } from './stock-practice.js';
