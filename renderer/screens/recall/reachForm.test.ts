import { describe, expect, it } from 'vitest';
import { reachFormOf, readReach } from './reachForm.ts';

const terms = { noContact: false, words: '', distanceKm: 12.5, driveMinutes: 20, seasonTo: '10-15' };
const typed = reachFormOf(terms);

describe('how a farm is reached, as typed', () => {
  it('reads back what stands on record', () => {
    expect(typed).toMatchObject({ kmText: '12.5', minutesText: '20', seasonText: '15.10.' });
    expect(readReach(typed).terms).toEqual(terms);
  });
  it('takes commas, and an empty box as not known', () => {
    const { terms: read } = readReach({ ...typed, kmText: '7,5', minutesText: ' ', seasonText: '' });
    expect(read).toEqual({ ...terms, distanceKm: 7.5, driveMinutes: null, seasonTo: null });
  });
  it.each([
    { change: { kmText: '-3' }, fault: 'km' },
    { change: { minutesText: 'an hour' }, fault: 'minutes' },
    { change: { seasonText: '31.11.' }, fault: 'season' },
  ])('sends nothing while $fault cannot be read', ({ change, fault }) => {
    const { terms: read, faults } = readReach({ ...typed, ...change });
    expect(read).toBeNull();
    expect(faults).toEqual({ km: false, minutes: false, season: false, [fault]: true });
  });
});
