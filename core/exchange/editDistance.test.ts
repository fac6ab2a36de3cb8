import fc from 'fast-check';
import { expect, test } from 'vitest';
import { editDistance } from './editDistance.ts';

test('kitten becomes sitting in three steps: the textbook example', () => {
  // the usual example of the method; common practice, no source
  expect(editDistance('kitten', 'sitting')).toBe(3);
  expect(editDistance('machnie', 'machine')).toBe(1);
  expect(editDistance('', 'abc')).toBe(3);
  expect(editDistance('position', 'postion', 2)).toBe(1);
  expect(editDistance('abcdef', 'uvwxyz', 2)).toBe(3);
});

test('is the same both ways, none for the same word, and at most the longer word', () => {
  const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 8 });
  fc.assert(
    fc.property(word, word, (a, b) => {
      const steps = editDistance(a, b);
      expect(steps).toBe(editDistance(b, a));
      expect(steps === 0).toBe(a === b);
      expect(steps).toBeLessThanOrEqual(Math.max(a.length, b.length));
      expect(steps).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
    }),
  );
});
