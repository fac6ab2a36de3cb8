import { describe, expect, test } from 'vitest';
import { doubleCustomers } from './doubleCustomers.ts';

const person = (id: number, name: string, its: object = {}) => ({
  ...{ id, name, place: '', address: '', phone: '', email: '' },
  ...its,
});
const pairs = (...people: ReturnType<typeof person>[]) =>
  doubleCustomers(people).map(({ oneId, otherId, alike }) => [oneId, otherId, alike.join(' ')]);

describe('two rows that may be one person', () => {
  test('have like names: a slip of the pen, words the other way round, an accent, "Farm" left out', () => {
    expect(pairs(person(1, 'Hollin Top'), person(2, 'Holin Top'))).toEqual([[1, 2, 'name']]);
    expect(pairs(person(1, 'Jan Holm'), person(2, 'Holm, Jan'))).toEqual([[1, 2, 'name']]);
    expect(pairs(person(1, 'Söder Ness'), person(2, 'Soder Ness Farm'))).toEqual([[1, 2, 'name']]);
  });

  test('or the same telephone, however it is written, or the same mail address', () => {
    const one = person(1, 'J. Holm', { phone: '+44 1632 960 123' });
    expect(pairs(one, person(2, 'High Fold', { phone: '01632-960123' }))).toEqual([[1, 2, 'phone']]);
    const mail = { email: 'Fold@example.org' };
    expect(pairs(person(1, 'A', mail), person(2, 'B', { email: 'fold@example.org ' }))).toEqual([[1, 2, 'email']]);
  });

  test('are two farms when their places differ, and short names must be the same', () => {
    const at = (place: string) => ({ place });
    expect(pairs(person(1, 'Low Moor', at('Ellerdale')), person(2, 'Low Moor', at('Overby')))).toEqual([]);
    expect(pairs(person(1, 'Low Moor', at('Overby')), person(2, 'Low Moor', at('overby')))).toEqual([
      [1, 2, 'name place'],
    ]);
    expect(pairs(person(1, 'Holm'), person(2, 'Helm'))).toEqual([]);
    expect(pairs(person(1, '', { phone: '12' }), person(2, '', { phone: '12' }))).toEqual([]);
  });

  test('come with the likeliest first', () => {
    const both = { place: 'Overby', phone: '01632 960123' };
    expect(
      pairs(person(1, 'Low Moor'), person(2, 'Low Moor', both), person(3, 'Low Moore', both)).map(([a, b]) => [a, b]),
    ).toEqual([
      [2, 3],
      [1, 2],
      [1, 3],
    ]);
  });
});
