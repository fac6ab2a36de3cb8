import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aSlip } from '#tests/support/aSlip.ts';
import { caseCount } from '#tests/support/counts.ts';
import type { Slip } from '../../contract/slip.ts';
import { day } from '../../units/day.ts';
import { emailText } from './emailText.ts';
import { letterFacts } from './letterFacts.ts';
import { phoneScript } from './phoneScript.ts';
import { shortMessage } from './shortMessage.ts';
import { spokenAnswer } from './spokenAnswer.ts';

const stop: Slip['headline'] = {
  ...{ kind: 'do-not-use', items: [11], label: 'Hook, left', finding: 'crack', foundOn: day('2026-10-12') },
  ...{ note: 'At weld toe, 34 mm', declined: null },
};
const bent: Slip['watch'][number] = {
  ...{ items: [4], label: 'Latch', finding: 'bent', severity: 'repair', foundOn: day('2026-09-01'), note: '' },
  declined: null,
};
const of = (its: Partial<Slip> = {}) => letterFacts(aSlip({ watch: [], ...its }));

describe('a short message', () => {
  it('says by which hours, on the meter, and whom to ring', () => {
    expect(shortMessage(of())).toBe(
      'Fenwater Works: Bring in the front loader of Vessel 118 in winter 27/28, or by 8 500 h on the meter. Ring 05550 4471.',
    );
  });

  it('says what must not be used before anything else', () => {
    expect(shortMessage(of({ headline: stop }))).toContain(
      'DO NOT USE the front loader of Vessel 118: hook, left cracked.',
    );
    expect(shortMessage(of({ watch: [bent] }))).toMatch(/^Fenwater Works: Latch bent, needs repair\. Bring in/);
  });

  const name = fc.string({ unit: 'grapheme', maxLength: 120 });
  const headline: fc.Arbitrary<Slip['headline']> = fc.oneof(
    name.map((label): Slip['headline'] => ({ ...stop, label })),
    fc
      .record({ dialHours: fc.double({ min: 0, max: 999_999, noNaN: true }), label: name })
      .map((its): Slip['headline'] => ({
        ...(aSlip().headline as Extract<Slip['headline'], { kind: 'come-in' }>),
        ...its,
      })),
    fc.constant<Slip['headline']>({ kind: 'no-forecast' }),
  );

  it('is always shorter than 160 characters, whatever things are called, and whole to its last letter', () => {
    fc.assert(
      fc.property(headline, name, name, name, name, fc.boolean(), (head, shop, machine, phone, label, found) => {
        const slip = aSlip({ headline: head, watch: found ? [{ ...bent, label }] : [] });
        slip.shop = { ...slip.shop, name: shop, phone };
        slip.machine = { ...slip.machine, name: machine, assembly: label };
        slip.dialMachine = found ? machine : null;
        const message = shortMessage(letterFacts(slip));
        expect(message.length).toBeLessThan(160);
        expect(message).not.toMatch(/\p{Surrogate}/u);
        if (head.kind === 'do-not-use') expect(message).toContain('DO NOT USE');
        if (head.kind === 'come-in') expect(message).toMatch(/\d h/);
      }),
      { numRuns: caseCount(5000) },
    );
  });
});

/** Of everything that is written or said. */
const everyText = (its: Partial<Slip>): string[] => {
  const facts = of(its);
  const { subject, body } = emailText(facts, 'a@example.org');
  return [shortMessage(facts), spokenAnswer(facts), subject, body, ...phoneScript(facts)];
};

describe('everything that is written or said', () => {
  it.each([
    { what: 'to come', its: {} },
    { what: 'forbidden', its: { headline: stop } },
    { what: 'to repair', its: { watch: [bent] } },
    { what: 'unknown', its: { headline: { kind: 'no-forecast' as const } } },
  ])('calls nothing safe, and writes plain characters: $what', ({ its }) => {
    for (const text of everyText(its)) {
      expect(text).not.toMatch(/\bsafe(ly|ty)?\b/i);
      expect(text).not.toMatch(/[\u2009\u00A0\u202F\u2212]/);
      expect(text).not.toMatch(/undefined|null|NaN/);
    }
  });

  it('puts open findings before hours', () => {
    const { body } = emailText(of({ watch: [bent] }), '');
    expect(body.indexOf('Latch: bent')).toBeGreaterThan(0);
    expect(body.indexOf('Latch: bent')).toBeLessThan(body.indexOf('8 500'));
    expect(spokenAnswer(of({ watch: [bent] }))).toMatch(/^First, the latch is bent and needs repair; bring/);
  });
});

describe('the answer to read aloud', () => {
  it('is one sentence, with hours, about when, and what for', () => {
    expect(spokenAnswer(of())).toBe(
      'Bring the front loader of Vessel 118 in during winter 27/28, or by 8 500 hours on the meter, about June 2028 at your use, for the boom foot pin, left.',
    );
    for (const its of [{}, { headline: stop }, { watch: [bent] }, { headline: { kind: 'no-forecast' as const } }])
      expect(spokenAnswer(of(its)).match(/[.!?](\s|$)/g)).toHaveLength(1);
  });

  it('names no month past two seasons, as the slip does', () => {
    const { headline } = aSlip();
    if (headline.kind !== 'come-in') expect.fail();
    expect(spokenAnswer(of({ headline: { ...headline, about: null } }))).toBe(
      'Have the front loader of Vessel 118 looked at next winter, and bring it in by 8 500 hours on the meter, for the boom foot pin, left.',
    );
  });

  it('of a machine that must not be used says that and nothing of hours', () => {
    expect(spokenAnswer(of({ headline: stop }))).toBe(
      'Please do not use the front loader of Vessel 118: the hook, left, is cracked and must not be used, as we found on 12 October 2026, so bring it in before it works again.',
    );
  });
});

it('a mail opens in the mail program with its lines as written (RFC 6068)', () => {
  const { mailto, subject, body } = emailText(of(), 'j.holm@example.org');
  const address = new URL(mailto);
  expect([address.protocol, address.pathname]).toEqual(['mailto:', 'j.holm@example.org']);
  expect(address.searchParams.get('subject')).toBe(subject);
  expect(address.searchParams.get('body')).toBe(body.replace(/\n/g, '\r\n'));
});
