export { BOARD_KEYS, standBoard } from './stand-board.js';
