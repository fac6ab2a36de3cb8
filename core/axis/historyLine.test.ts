import { describe, expect, it } from 'vitest';
import { historyLine } from './historyLine.ts';
import { hoursScale } from './scale.ts';

const scale = hoursScale({ fromHours: 1000, toHours: 2000, fromPx: 0, toPx: 1000 });
const known = (hours: number) => ({ hours, known: true, fromHours: hours, toHours: hours });

describe('what lies behind a position', () => {
  it('is a line from its renewal to now, with a dot at each visit', () => {
    const line = historyLine(
      { renewals: [known(1200)], readings: [1500, 1700], meterChanges: [], untilHours: 1700 },
      scale,
    );
    expect(line?.path).toBe('M200 0H700');
    expect(line?.renewals).toMatchObject([{ x: 200, known: true, rangePath: null }]);
    expect(line?.readings).toEqual([{ x: 500 }, { x: 700 }]);
  });

  it('has an open triangle on its range where the hours of a renewal are not known', () => {
    const unknown = { hours: 1300, known: false, fromHours: 900, toHours: 1600 };
    const line = historyLine({ renewals: [unknown], readings: [1700], meterChanges: [], untilHours: 1700 }, scale);
    expect(line?.renewals[0]).toMatchObject({ x: 300, known: false, rangePath: 'M0 -4V4M0 0H600M600 -4V4' });
  });

  it('begins with a break where it began off the scale, and leaves the mark there out', () => {
    const line = historyLine(
      { renewals: [known(0)], readings: [500, 1500], meterChanges: [], untilHours: 1700 },
      scale,
    );
    expect(line?.path).toBe('M0 -4L3 0L0 4M3 0H700');
    expect(line?.renewals).toEqual([]);
    expect(line?.readings).toEqual([{ x: 500 }]);
  });

  it('zigzags where the meter was changed and goes on', () => {
    const line = historyLine(
      { renewals: [known(1200)], readings: [], meterChanges: [1500, 1100], untilHours: 1700 },
      scale,
    );
    expect(line?.meterChanges).toEqual([{ x: 500 }]);
    expect(line?.path).toBe('M200 0H492L496 -6L504 6L508 0H700');
  });

  it('is nothing where nothing was measured or renewed', () => {
    expect(historyLine({ renewals: [], readings: [], meterChanges: [1500], untilHours: 1700 }, scale)).toBeNull();
  });
});
