import { expect, it } from 'vitest';
import { flagText, forecastSentence } from './markWords.ts';

const said = {
  position: 'Slide strip, bottom rear',
  hoursLeft: { low: 150, middle: 470, high: 880 },
  ownReadings: 3,
  likeParts: 14,
};

it('a row is one sentence: what, how long, and on what it rests', () => {
  expect(forecastSentence(said)).toBe(
    'Slide strip, bottom rear: 150 to 880 hours left, likely 470; 3 own readings, 14 like parts',
  );
  expect(forecastSentence({ ...said, item: 4, point: 'thickness' })).toMatch(
    /^4 Slide strip, bottom rear, thickness: /,
  );
});

it('a finding takes the place of the forecast', () => {
  expect(forecastSentence({ ...said, doNotUse: 'crack, 34 mm' })).toBe(
    'Slide strip, bottom rear: DO NOT USE: crack, 34 mm. No forecast while this is open',
  );
});

it('a part past at its last size is said to be, and how far', () => {
  expect(forecastSentence({ ...said, pastLimitMm: 0.36 }, ',')).toBe(
    'Slide strip, bottom rear: 0,36\u00A0mm past its limit; 3 own readings, 14 like parts',
  );
});

it('no forecast is not dressed up as one', () => {
  const none = { low: null, middle: null, high: null };
  expect(forecastSentence({ ...said, hoursLeft: none, ownReadings: 0 })).toBe(
    'Slide strip, bottom rear: no forecast; no own reading, 14 like parts',
  );
});

it('estimated hours carry the word', () => {
  expect(flagText(6840, true)).toBe('est. 6\u2009840\u00A0h');
  expect(flagText(6840, false)).toBe('6\u2009840\u00A0h');
});
