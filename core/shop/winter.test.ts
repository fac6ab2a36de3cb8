import { describe, expect, it } from 'vitest';
import { day } from '../units/day.ts';
import { wintersFrom } from './winter.ts';

const ofYear = { winterFrom: '11-01', winterTo: '02-28' };
const names = (asOf: string, season = ofYear) => wintersFrom(season, day(asOf), 3).map((winter) => winter.name);

describe('the winter being planned', () => {
  it('is the next one while the season is on', () => {
    expect(names('2026-10-12')).toEqual(['26/27', '27/28', '28/29']);
    expect(wintersFrom(ofYear, day('2026-10-12'), 1)).toEqual([
      { name: '26/27', from: '2026-11-01', to: '2027-02-28' },
    ]);
  });

  it('is the running one from its first day to its last, over the new year too', () => {
    expect(names('2026-11-01')[0]).toBe('26/27');
    expect(names('2027-01-15')[0]).toBe('26/27');
    expect(names('2027-02-28')[0]).toBe('26/27');
    expect(names('2027-03-01')[0]).toBe('27/28');
  });

  it('takes a single year for its name where the slack season lies within one', () => {
    expect(names('2027-07-01', { winterFrom: '06-01', winterTo: '08-31' })).toEqual(['2027', '2028', '2029']);
    expect(names('2027-09-01', { winterFrom: '06-01', winterTo: '08-31' })[0]).toBe('2028');
  });

  it('ends on the 28th of February where the shop said the 29th and the year has none', () => {
    const leap = { winterFrom: '11-01', winterTo: '02-29' };
    expect(wintersFrom(leap, day('2026-10-01'), 2).map((winter) => winter.to)).toEqual(['2027-02-28', '2028-02-29']);
  });

  it('names the turn of the century 99/00', () => {
    expect(names('2099-12-01')[0]).toBe('99/00');
  });
});
