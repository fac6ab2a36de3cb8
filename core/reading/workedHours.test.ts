import { describe, expect, it } from 'vitest';
import type { MachineLife } from '../shop/machineLife.ts';
import { day } from '../units/day.ts';
import { hoursLine } from './hoursLine.ts';
import { machineHoursOfWorked, presentShare, shareStretches, workedBetween } from './workedHours.ts';

const reading = (takenOn: string, dialHours: number) => ({
  id: 1,
  takenOn: day(takenOn),
  kind: 'reading' as const,
  dialHours,
  newDialHours: null,
  errorHours: null,
  parked: false,
});
const LIFE: MachineLife = {
  machineId: 1,
  meterDigits: 5,
  hoursBefore: null,
  dialEvents: [reading('2020-01-01', 1000), reading('2022-01-01', 3000), reading('2024-01-01', 5000)],
  workShares: [
    { from: null, share: 0.8, workType: 'silage' },
    { from: day('2022-01-01'), share: 0.1, workType: 'spraying' },
  ],
};
const stretches = shareStretches(LIFE, hoursLine(LIFE, day('2024-01-01')));

describe('worked hours', () => {
  it('are machine hours times the share of their stretch', () => {
    expect(workedBetween(stretches, 1000, 3000)).toBeCloseTo(1600, 9);
    expect(workedBetween(stretches, 2000, 4000)).toBeCloseTo(800 + 100, 9);
    expect(workedBetween(stretches, 4000, 4000)).toBe(0);
  });
  it('add up over any split', () => {
    const whole = workedBetween(stretches, 0, 5000);
    expect(workedBetween(stretches, 0, 2345) + workedBetween(stretches, 2345, 5000)).toBeCloseTo(whole, 9);
  });
  it('turn back into machine hours at the present share', () => {
    expect(presentShare(LIFE, day('2021-06-01'))).toBe(0.8);
    expect(presentShare(LIFE, day('2024-01-01'))).toBe(0.1);
    expect(presentShare({ ...LIFE, workShares: [] }, day('2024-01-01'))).toBe(1);
    expect(machineHoursOfWorked(50, 0.1)).toBeCloseTo(500, 9);
    expect(machineHoursOfWorked(50, 0)).toBeNull();
  });
  it('a change of share after the as-of day is not yet known', () => {
    expect(shareStretches(LIFE, hoursLine(LIFE, day('2021-06-01')))).toHaveLength(1);
  });
});
