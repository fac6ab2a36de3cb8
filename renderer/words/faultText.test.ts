import { describe, expect, it } from 'vitest';
import { cautionSentences, cautionText } from '#core/words/cautionText.ts';
import { faultSentences, faultText, fieldName } from './faultText.ts';

const banned = /\b(error|invalid|oops|please|sorry|failed)\b/i;

describe('a fault in words', () => {
  it('names each field and what was expected of it', () => {
    const said = faultText({
      code: 'not-as-expected',
      facts: {},
      issues: [{ path: 'sizes.3.sizeMm', expected: 'a size from 0 to 10 000 mm' }],
    });
    expect(said.what).toBe('sizes, 4, size mm: a size from 0 to 10 000 mm was expected.');
    expect(said.safe).toBe('Nothing was changed.');
  });
  it('with a code nobody has words for is still said, with its facts', () => {
    expect(faultText({ code: 'meter-on-fire', facts: { dialHours: 812 } }).what).toBe(
      'The program refused this: meter on fire (dial hours 812).',
    );
  });
  it('never scolds, and ends in a full stop', () => {
    for (const code of Object.keys(faultSentences)) {
      const said = faultText({ code, facts: {}, path: 'machineId' });
      for (const part of [said.what, said.safe, said.next].filter((text) => text !== '')) {
        expect(part).not.toMatch(banned);
        expect(part).toMatch(/[.!?]$/);
      }
    }
    expect('That is an invalid value').toMatch(banned);
  });
});

describe('a caution in words', () => {
  it('is a sentence for every code, known or not', () => {
    for (const code of [...Object.keys(cautionSentences), 'something-new'])
      expect(cautionText(code)).toMatch(/^[A-Z].*\.$/);
    expect(cautionText('hours-estimated', { sdHours: 120 })).toBe('Hours are estimated, give or take 240\u00A0h.');
  });
});

it('a path is said as a person would point at it', () => {
  expect(fieldName('renewAtMm')).toBe('renew at mm');
  expect(fieldName('')).toBe('What was sent');
});
