import { expect, it } from 'vitest';
import { letterDoes } from './letters.ts';
import type { OpenQuestion } from './questions.ts';

const asked: OpenQuestion = {
  box: { pointId: 1, station: '', row: 0, column: 0 },
  key: '1|',
  question: { code: 'better-than-last', facts: {}, choices: ['measure-again', 'was-renewed'] },
};

it('letters in a size box are orders, and a question’s come first', () => {
  expect(letterDoes('r', null, false)).toEqual({ does: 'renewed' });
  expect(letterDoes('r', asked, false)).toEqual({ does: 'answer', choice: 'was-renewed' });
  expect(letterDoes('+', asked, false)).toEqual({ does: 'see' });
  expect(letterDoes('h', asked, false)).toEqual({ does: 'hours' });
});

it('figures, marks and the unit go into the box', () => {
  for (const key of ['1', ',', '.', '-', 'm', 'Backspace', 'Home', 'F5'])
    expect(letterDoes(key, null, false)).toBeNull();
  expect(letterDoes('m', asked, false)).toEqual({ does: 'answer', choice: 'measure-again' });
});

it('Escape only ends a swap', () => {
  expect(letterDoes('Escape', asked, true)).toEqual({ does: 'stop-swapping' });
  expect(letterDoes('Escape', asked, false)).toBeNull();
});
