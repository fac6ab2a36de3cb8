/** Labels of "why this number"; its sentences stand in core/words/whyText.ts, for the command line says them too. */
export const whyWords = {
  head: (name: string): string => `Why this number: ${name}`,
  working: 'Looking up what it rests on',
  width: 'What makes the range this wide',
  widthNote: 'Each alone, all else as it is: they do not add up, for what one leaves open another fills.',
  noWidth:
    'No range to take apart here: there is no limit, it has been passed or lies beyond reckoning, or it comes from a pin and its bores, each with an account of its own.',
  doubts: 'What to doubt',
} as const;
