import { describe, expect, it } from 'vitest';
import { type PointOutlook, rolesOf } from './role.ts';

const line = { nextWinterHours: 800, winterAfterHours: 1580 };
const aPoint = (its: Partial<PointOutlook>): PointOutlook => ({
  assemblyId: 1,
  doNotUse: false,
  hasForecast: true,
  decidingHoursLeft: 3000,
  ...its,
});

describe('the role of a position', () => {
  it('is this winter when its deciding hours end before the following winter starts', () => {
    expect(rolesOf([aPoint({ decidingHoursLeft: 799 })], line)).toEqual(['this-winter']);
    expect(rolesOf([aPoint({ decidingHoursLeft: -20 })], line)).toEqual(['this-winter']);
    expect(rolesOf([aPoint({ decidingHoursLeft: 800 })], line)).toEqual(['leave']);
  });

  it('is with-it only where the same assembly is opened anyway and the part ends within one more year', () => {
    const soon = aPoint({ decidingHoursLeft: 300 });
    const later = aPoint({ decidingHoursLeft: 1200 });
    const muchLater = aPoint({ decidingHoursLeft: 2200 });
    const elsewhere = aPoint({ assemblyId: 2, decidingHoursLeft: 1200 });
    expect(rolesOf([soon, later, muchLater, elsewhere], line)).toEqual(['this-winter', 'with-it', 'leave', 'leave']);
    expect(rolesOf([later], line)).toEqual(['leave']);
  });

  it('is stop under a do-not-use finding, and that opens the assembly too', () => {
    const stopped = aPoint({ doNotUse: true, hasForecast: false, decidingHoursLeft: null });
    expect(rolesOf([stopped, aPoint({ decidingHoursLeft: 1200 })], line)).toEqual(['stop', 'with-it']);
  });

  it('is none without a limit, leave when the limit lies beyond reckoning', () => {
    expect(rolesOf([aPoint({ hasForecast: false, decidingHoursLeft: null })], line)).toEqual(['none']);
    expect(rolesOf([aPoint({ decidingHoursLeft: null })], line)).toEqual(['leave']);
  });

  it('plans for a machine whose use nobody knows only what has gone by already', () => {
    const unknown = { nextWinterHours: null, winterAfterHours: null };
    expect(rolesOf([aPoint({ decidingHoursLeft: 10 })], unknown)).toEqual(['leave']);
    expect(rolesOf([aPoint({ decidingHoursLeft: -10 })], unknown)).toEqual(['this-winter']);
  });
});
