/** The basis of a rule of thumb. */
export const COMMON_PRACTICE = 'common practice, no source';

/** The basis of a plain fact about the solids. */
export const MEASURED = 'measured on the solids';
