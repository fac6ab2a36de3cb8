import { expect, test } from 'vitest';
import { EMPTY_CUT, EMPTY_MAKE, formOf, workOf } from './workForm.ts';

const whole = {
  ...formOf(null),
  what: 'Bore and bush',
  takeOffs: 'ram out; 0,5\n\ncarrier out; 1.5',
  ownHours: '2,5',
  partsPrice: '12.50',
  cuts: [{ what: 'Boss L', centre: '0.6 to REAR', lower: '51,40', upper: '51.43' }],
  makes: [{ ...EMPTY_MAKE, what: 'boss L', outside: '51.48', inside: '40', length: '60', leadDays: '' }],
};

test('a line of work is read as typed, commas and points alike', () => {
  expect(workOf(whole)).toMatchObject({
    takeOffs: [
      { name: 'ram out', hours: 0.5 },
      { name: 'carrier out', hours: 1.5 },
    ],
    ownHours: 2.5,
    partsPrice: 12.5,
    cuts: [{ lowerMm: 51.4, upperMm: 51.43 }],
    makes: [{ outsideMm: 51.48, insideMm: 40, lengthMm: 60, bought: false, leadDays: null }],
  });
});

test('what cannot be read is not taken: no name, limits the wrong way round, a take-off without hours', () => {
  expect(workOf({ ...whole, what: ' ' })).toBeNull();
  expect(workOf({ ...whole, cuts: [{ ...EMPTY_CUT, what: 'x', lower: '2', upper: '1' }] })).toBeNull();
  expect(workOf({ ...whole, takeOffs: 'carrier out' })).toBeNull();
  expect(workOf({ ...whole, ownHours: 'two' })).toBeNull();
  expect(workOf({ ...whole, makes: [{ ...EMPTY_MAKE, what: 'x', count: '0' }] })).toBeNull();
});

test('a line that is opened again reads as it was', () => {
  const work = workOf(whole)!;
  const line = {
    ...work,
    lineId: 1,
    item: 3,
    position: 'Boss L',
    stands: 'proposed' as const,
    declinedWords: '',
    boredMm: [null],
    left: [],
  };
  expect(workOf(formOf(line))).toEqual(work);
});
