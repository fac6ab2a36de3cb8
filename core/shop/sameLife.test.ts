import { expect, test } from 'vitest';
import { readsAlike } from './sameLife.ts';

test('data that differs anywhere does not read alike', () => {
  const point = { id: 1, sizes: [{ mm: 9.5, station: '' }], limits: [], note: null };
  expect(readsAlike(point, structuredClone(point))).toBe(true);
  expect(readsAlike(point, { ...point, sizes: [{ mm: 9.4, station: '' }] })).toBe(false);
  expect(readsAlike(point, { ...point, sizes: [...point.sizes, { mm: 9.5, station: '' }] })).toBe(false);
  expect(readsAlike(point, { ...point, more: undefined })).toBe(false);
  expect(readsAlike({ id: 1, a: undefined }, { id: 1, b: undefined })).toBe(false);
  expect(readsAlike(point, { ...point, limits: {} })).toBe(false);
  expect(readsAlike([], {})).toBe(false);
  expect(readsAlike({ note: null }, { note: {} })).toBe(false);
});
