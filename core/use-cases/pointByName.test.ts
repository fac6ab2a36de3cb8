import { expect, it } from 'vitest';
import { aMachine, aPoint, aShopLife } from '#tests/support/aShopLife.ts';
import { pointByName } from './pointByName.ts';

const life = aShopLife({
  machines: [aMachine(), aMachine({ machineId: 2, name: 'Ridge 15/6' }), aMachine({ machineId: 3, name: 'Möller' })],
  points: [
    aPoint(1, { assembly: 'Loader', position: 'Pin, left', point: 'diameter' }),
    aPoint(2, { machineId: 2, assembly: 'Loader', position: 'Pin, left', point: 'diameter' }),
    aPoint(3, { machineId: 3, assembly: 'Hook', position: 'Ring', point: 'Bore' }),
    aPoint(4, { machineId: 3, assembly: 'Hook', position: 'Ring', point: 'bore' }),
  ],
});
const foundId = (asked: string) => pointByName(life, asked).found?.pointId ?? null;

it('finds a point whatever the case, accents, spaces and stops', () => {
  expect(foundId('Vessel 118/Loader/Pin, left/diameter')).toBe(1);
  expect(foundId(' VESSEL 118 / loader / pin left / Diameter')).toBe(1);
  expect(foundId('ridge 15/6/loader/pin left/diameter')).toBe(2);
});

it('parts of the name may be left out while one point is named', () => {
  expect(foundId('Ridge 15/6/Pin left')).toBe(2);
  expect(pointByName(life, 'Pin left')).toMatchObject({ found: null, oneOf: { length: 2 } });
});

it('two names that differ by case alone: the one typed, else both are named', () => {
  expect(foundId('Möller/Hook/Ring/Bore')).toBe(3);
  expect(foundId('Möller/Hook/Ring/bore')).toBe(4);
  expect(pointByName(life, 'moller/hook/ring/BORE')).toEqual({
    found: null,
    oneOf: ['Möller/Hook/Ring/Bore', 'Möller/Hook/Ring/bore'],
  });
});

it('a name nothing goes by gives those most like it, nearest first', () => {
  const by = pointByName(life, 'Vesel 118/Loader/Pin left/diameter');
  expect(by).toMatchObject({ found: null, oneOf: null });
  expect('near' in by && by.near[0]).toBe('Vessel 118/Loader/Pin, left/diameter');
  expect(pointByName({ ...life, points: [] }, 'x')).toEqual({ found: null, oneOf: null, near: [] });
});
