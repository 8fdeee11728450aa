import { type Frame, frameIn, WORLD } from '../frame/index.js';
import { type Body, matrix } from './kernel.js';

/** A body that stands in a frame, written in the frame around it. The caller owns it. */
export const standingIn = (body: Body, place: Frame): Body => body.transform(matrix(place));

/** A body as it is seen from a frame that stands beside it. The caller owns it. */
export const seenFrom = (body: Body, place: Frame): Body => body.transform(matrix(frameIn(place, WORLD)));
