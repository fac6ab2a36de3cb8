/** Words of "why this number". */
export const whyWords = {
  head: (name: string): string => `Why this number: ${name}`,
  working: 'Looking up what it rests on',
  width: 'What makes the range this wide',
  widthNote: 'Measuring again takes from the hatched ones; the open ones stay.',
} as const;

type Facts = Record<string, string | number | boolean | null>;

export const whyStep = (code: string, facts: Facts): string => `${code} ${JSON.stringify(facts)}`;
export const widthSource = (source: string): string => source;
