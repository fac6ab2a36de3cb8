/** No part put in is this many times larger or smaller than the new size: a slip of the pen, or of the unit. Common practice, no source. */
const NO_SUCH_PART = 5;

/** Whether a size put in may be one: ten times off, or in inches, it is not. A new size of 0 (slack) tells nothing. */
export const mayBePutIn = (newSizeMm: number, sizeMm: number): boolean =>
  newSizeMm <= 0 || (sizeMm < NO_SUCH_PART * newSizeMm && sizeMm > newSizeMm / NO_SUCH_PART);
