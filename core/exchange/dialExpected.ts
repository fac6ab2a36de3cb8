type Facts = Record<string, string | number | boolean | null>;

/** What was expected of a dial that cannot be, or is odd, in the fewest words. */
const EXPECTED: Record<string, (facts: Facts) => string> = {
  'dial-went-back': ({ lastDialHours, lastReadOn, rolloverPlausible, fullScaleHours, tenTimesFits }) =>
    [
      `at least ${lastDialHours} h, as read on ${lastReadOn}`,
      'or event new-meter',
      ...(rolloverPlausible ? [`or event rollover past ${fullScaleHours} h`] : []),
      ...(tenTimesFits ? ['or a figure ten times as large'] : []),
    ].join(', '),
  'dial-above-later': ({ laterDialHours, laterReadOn, lastDialHours }) =>
    laterDialHours === undefined
      ? `at most what was read later (below ${lastDialHours} h)`
      : `at most ${laterDialHours} h, as read on ${laterReadOn}`,
  'rollover-without-fall': ({ lastDialHours, lastReadOn }) =>
    `below ${lastDialHours} h, as read on ${lastReadOn}: a meter that starts again shows less`,
  'rise-over-24-a-day': ({ lastDialHours, days }) =>
    `a rise of at most 24 h a day: ${lastDialHours} h was read ${days} days before`,
  'ten-times-off': ({ likelyDialHours }) => `perhaps ${likelyDialHours} h`,
  'dial-over-full-scale': ({ fullScaleHours }) => `below the full scale of the meter, ${fullScaleHours} h`,
  'meter-may-have-stopped': ({ lastDialHours, days }) =>
    `more than ${lastDialHours} h after ${days} days, or event estimate`,
  'meter-digits-not-known': ({ fullScaleHours }) =>
    `meter_digits in machines.csv; taken to start again at ${fullScaleHours} h`,
};

export const dialExpected = (code: string, facts: Facts): string =>
  EXPECTED[code]?.(facts) ?? 'a dial that goes on from the last';
