import type { Frame } from '../frame/index.js';
import { type Body, matrix } from './kernel.js';

/** A body that stands in a frame, written in the frame around it. The caller owns it. */
export const standingIn = (body: Body, place: Frame): Body => body.transform(matrix(place));
