import { describe, expect, it } from 'vitest';
import { useSentence, whyStep, widthLines, widthSentence, widthSource } from './whyText.ts';

const said = (code: string, facts: Record<string, string | number | boolean | null>) =>
  whyStep({ code, facts }, '.').sentence.replaceAll('\u00A0', ' ').replaceAll('\u2009', ' ');

const rates = { lowPer1000hMm: 0.11, middlePer1000hMm: 0.14, highPer1000hMm: 0.17 };

describe('why this number, in words', () => {
  it('says what was measured, and that nothing was', () => {
    const facts = {
      ownReadings: 3,
      newSizeMm: 25,
      newSizeSdMm: 0.025,
      lastSizeMm: 24.16,
      lastOn: '2025-12-09',
      lastErrorSdMm: 0.01,
    };
    expect(said('readings', facts)).toBe(
      'It went in at 25.00 ±0.05 mm and was measured three times since; last on 9 Dec 2025 it read 24.16 ±0.02 mm.',
    );
    expect(said('readings', { ...facts, ownReadings: 0 })).toMatch(/has not been measured since\.$/);
  });

  it('tells a change that shows a rate from one too small to see yet', () => {
    const change = { changeMm: 0.2, errorMm: 0.07, workedHours: 1834 };
    expect(said('change-seen', change)).toBe(
      'The last two looks, 1 834 h apart, differ by 0.20 mm (more worn), more than the gauges’ error of 0.07 mm: a rate can be read from it.',
    );
    expect(said('change-too-small-to-see', { ...change, changeMm: -0.02 })).toMatch(
      /0\.02 mm \(better\).*too small to see yet/,
    );
  });

  it('says hours, and what part of them the assembly works', () => {
    const facts = {
      partHours: 6243,
      workedHours: 2497,
      workedHoursSd: 0,
      workShare: 0.4,
      startSdHours: 0,
      machineHours: 6243,
    };
    expect(said('part-hours', facts)).toBe(
      'It has been in for 6 243 h of the machine’s 6 243 h. The assembly works 40 % of those: 2 497 h.',
    );
    expect(said('part-hours', { ...facts, workShare: 1, startSdHours: 1000 })).toMatch(/give or take 2 000 h/);
    expect(said('part-hours', { ...facts, partHours: null })).toMatch(/not known/);
  });

  it('goes from the trade over like parts to this one', () => {
    expect(said('class-before', { partClass: 'loader pin', from: 'trade', ...rates })).toBe(
      'Before anything was measured here, the trade says of such parts (loader pin): 0.11 to 0.17 mm in 1 000 h, likely 0.14.',
    );
    expect(said('class-before', { partClass: 'loader pin', from: 'wide', ...rates })).toMatch(/no figure/);
    expect(said('class-after', { parts: 31, machines: 14, ...rates })).toMatch(/^31 parts on 14 machines measured/);
    expect(said('class-after', { parts: 0, machines: 0, ...rates })).toMatch(/None has been measured/);
    expect(said('part', { ...rates, ownShare: 0.62, borrowedShare: 0.38, wearNowMm: 0.84 })).toBe(
      'Taken together: 0.11 to 0.17 mm in 1 000 h, likely 0.14; 62 % of that from its own readings, the rest from like parts and its machine. By now it has worn about 0.84 mm.',
    );
  });

  it('ends at the limit with the figure that decides, and at the months', () => {
    const facts = {
      renewAtMm: 24,
      source: "shop's rule",
      limitWearMm: 1,
      lowHoursLeft: 150,
      middleHoursLeft: 470,
      highHoursLeft: 880,
      decides: 'low',
      chancePastLimit: 0.2,
      pastLimitMm: null,
    };
    expect(said('limit', facts)).toBe(
      "Renew at 24.0 mm (shop's rule) allows 1.00 mm of wear: 150 to 880 hours left, likely 470. The low figure decides, since it tows or lifts. The chance that it has been passed already: about 2 in 10.",
    );
    expect(said('limit', { ...facts, pastLimitMm: 0.4 })).toMatch(/at its last size it was 0\.40 mm past\.$/);
    expect(said('no-limit', {})).toMatch(/nothing to count hours to/);
    const use = { hoursPerYear: 693, lowHoursPerYear: 560, highHoursPerYear: 820, ownUseShare: 0.9 };
    expect(said('date', { ...use, lowDate: '2026-10-02', middleDate: '2027-08-02', highDate: null })).toBe(
      'At 693 (560 to 820) hours a year, mostly from its own meter readings: Oct 2026 or later, likely Aug 2027.',
    );
    const last = '2026-10-20';
    expect(said('date', { ...use, lowDate: last, middleDate: last, highDate: last })).toBe(
      'It was past already when last looked at, 20 Oct 2026.',
    );
    expect(said('date', { ...use, lowDate: null, middleDate: null, highDate: null })).toMatch(/no month is given/);
  });

  it('still says a step and a source nobody has words for', () => {
    expect(whyStep({ code: 'moon-phase', facts: { days: 3 } }, '.')).toEqual({ head: 'Moon phase', sentence: '3' });
    expect(widthSource('moon-phase')).toBe('moon phase');
  });

  it('says how such wear goes on, and how hard the machine is', () => {
    const shape = (lowPower: number, middlePower: number, highPower: number) =>
      said('class-shape', { lowPower, middlePower, highPower });
    expect(shape(1, 1, 1)).toMatch(/^Such parts wear evenly/);
    expect(shape(0.92, 1.01, 1.07)).toMatch(/is not settled \(power of hours 0\.92 to 1\.07\)/);
    expect(shape(0.7, 0.8, 0.9)).toMatch(/slows as hours go on/);
    expect(shape(1.1, 1.2, 1.3)).toMatch(/quickens/);
    const times = { lowTimes: 0.9, middleTimes: 1.12, highTimes: 1.31 };
    expect(said('machine', { ...times, classesHeard: 5 })).toBe(
      'By what was measured on it (five part classes): parts here wear 0.90 to 1.31 times as fast as on the usual machine, likely 1.12.',
    );
    expect(said('machine', { ...times, classesHeard: 0 })).toMatch(/^Nothing has been measured on it/);
    expect(said('machine', { ...times, classesHeard: 1, workType: 'hard', expectedTimes: 1.18 })).toMatch(
      /^The shop says it does hard work, from which 1\.18 times the usual wear is expected\. By what/,
    );
  });

  it('tells what the range would be without each source, the greatest first, and leaves out what changes nothing', () => {
    const width = {
      hours: 1000,
      to: 'high' as const,
      without: [
        { source: 'gauge', hours: 900 },
        { source: 'class', hours: 999 },
        { source: 'start', hours: 1003 },
        { source: 'drift', hours: 600 },
      ],
      days: 730,
      daysWithoutUse: 610,
    };
    expect(widthLines(width).map(({ source }) => source)).toEqual(['drift', 'gauge']);
    expect(widthLines(width)[0]).toMatchObject({ withoutHours: 600, narrowerShare: 0.4 });
    expect(widthSentence(width).replaceAll('\u00A0', ' ').replaceAll('\u2009', ' ')).toMatch(
      /^The range is 1 000 h wide, from low to high/,
    );
    expect(useSentence(width)).toMatch(/24 months apart; .* 20 months\.$/);
    expect(useSentence({ ...width, daysWithoutUse: 729 })).toBeNull();
    expect(useSentence({ ...width, days: null })).toBeNull();
  });
});
