export { joinedCorners } from './joined-corners.js';
