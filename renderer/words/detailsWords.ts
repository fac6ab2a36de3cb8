/** What is said of a defect to whoever helps with it: where it broke, in which program, and nothing of what was typed. */
export const detailsWords = {
  copy: 'Copy details',
  copied: 'Details copied',
} as const;

type Defect = { operation: string; detail: string };

/** Six lines at most, no name and no figure of the shop's: the operation, the defect's own words, program, system, hour. */
export const detailsText = ({ operation, detail }: Defect, at: Date, system = navigator.userAgent): string =>
  ['Hours and Wear', `where: ${operation}`, `what: ${detail}`, `when: ${at.toISOString()}`, `on: ${system}`].join('\n');
