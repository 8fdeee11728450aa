import { trimmed } from './fixed.js';

/**
 * An angle, degrees to 0.01.
 *
 * @param degrees finite
 * @example printAngle(7.5) // '7.5°'
 */
export const printAngle = (degrees: number): string => `${trimmed(degrees, 2)}°`;
