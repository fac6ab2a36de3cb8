/** Words of the window's frame. */
export const tabWords = {
  machines: 'Machines',
  hours: 'Hours',
  stripDown: 'Strip-down',
  customers: 'Customers',
  slips: 'Slips',
  partClasses: 'Part classes',
  shop: 'Shop',
} as const;

export const frameWords = {
  screens: 'Screens',
  noSuchScreen: 'There is nothing at this address.',
  toMachines: 'To the machines',
  opening: 'Opening the record',
  brokeHead: 'This screen could not be drawn.',
  brokeSafe: 'Nothing was lost: what was saved is in the record.',
  brokeNext: 'Go to the machines and come back; if it happens again, start the program again.',
  tryAgain: 'Try again',
} as const;
