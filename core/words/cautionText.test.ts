import { expect, it } from 'vitest';
import { cautionSentences, cautionText } from './cautionText.ts';

it('a limit on the wrong side of new is named: renew or reject', () => {
  const facts = { limitMm: 12.5, newSizeMm: 12 };
  expect(cautionText('limit-better-than-new', { ...facts, limit: 'reject-at' })).toMatch(/^Reject at 12\.5/);
  expect(cautionText('limit-better-than-new', { ...facts, limit: 'renew-at' })).toMatch(/^Renew at 12\.5/);
});

it('a size that is not used is told with its day and the reason', () => {
  const facts = { takenOn: '2024-01-10', newSizeMm: 12 };
  expect(cautionText('size-parked', facts)).toMatch(/10 Jan 2024 is questioned/);
  expect(cautionText('size-no-hours', facts)).toMatch(/10 Jan 2024 is left out: the machine has no hours/);
  expect(cautionText('size-before-fitted', facts)).toMatch(/10 Jan 2024 is left out: it is from before/);
  expect(cautionText('put-in-size-not-used', facts)).toMatch(/counted from 12/);
});

it('a shop that writes inches is told inches, in every caution', () => {
  const anySize = new Proxy<Record<string, number>>(
    {},
    { get: (_, name) => (String(name).endsWith('Mm') ? 39.37 : 3) },
  );
  for (const [code, sentence] of Object.entries(cautionSentences))
    expect(sentence(anySize, 'in.'), code).not.toMatch(/\bmm\b/);
  expect(cautionText('past-reject', { rejectAtMm: 39.37 }, 'in.')).toBe(
    'Past reject at 1.55\u00A0in when last measured.',
  );
});
