/** Done, and nothing of severity error. */
export const exitDone = 0;
/** Findings of severity error, or a plan that is out of date. */
export const exitFindings = 1;
/** Wrong usage, or a file that cannot be read or is not what it should be. */
export const exitUnusable = 2;
