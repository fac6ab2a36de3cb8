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
  toMachines: 'To the machines',
  opening: 'Opening the record',
  fetching: 'Fetching this screen',
  brokeTitle: 'No screen to show',
  brokeHead: 'This screen could not be drawn.',
  brokeSafe:
    'Nothing was lost: what was saved is in the record, and what you had typed here is kept until the program ends. It is offered again as soon as this screen stands.',
  brokeNext: 'Go to the machines and come back; if it happens again, start the program again.',
  tryAgain: 'Try again',
  leave: 'Leave as it was',
  anotherRecord: (file: string | null) =>
    file === null ? 'Another window closed this record.' : `Another window opened another record: ${file}.`,
  putInItsPlace: 'Another window put another file in the place of this record.',
  anotherRecordThen: (isSameFile: boolean) =>
    isSameFile
      ? 'Nothing more is saved from this window until it is loaded anew. What is typed here is kept and offered again.'
      : 'Nothing more is saved from this window until you choose. What is typed here stays, and is kept for its own record.',
  openOwnAgain: (file: string) => `Open ${file} again`,
  loadOther: (file: string | null) => (file === null ? 'Load anew' : `Load ${file}`),
  typedHead: 'You had typed this, and it is not saved.',
  typedNext: 'Open the form again and put it back. What finds no box stays here.',
  typedLine: (label: string, text: string) => (label ? `${label}: ${text}` : text),
  typedPutBack: 'Put it back',
  typedCopy: 'Copy it',
  typedLetGo: 'Let it go',
} as const;
