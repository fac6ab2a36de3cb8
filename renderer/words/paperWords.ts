/** Words of every screen that shows a paper. */
export const paperWords = { save: 'Save PDF', print: 'Print', drawing: 'Drawing the pages' } as const;
