/** Words of the form that says which points of an assembly make joints. */
export const jointWords = {
  key: 'Joints',
  head: 'Which pin runs in which bores',
  what: 'Where pin and bores of a joint are measured in one visit, its slack is worked out from them. What stood before stays in the record.',
  none: 'No slack is measured on this assembly, so it has no joint to say.',
  pin: 'Pin',
  bores: 'Bores',
  noPin: 'not said',
  of: (item: number, position: string, point: string): string => `${item} ${position}, ${point}`,
  half: 'A joint needs its pin and at least one bore; or neither.',
  save: 'Save the joints',
  loading: 'Fetching the joints',
} as const;
