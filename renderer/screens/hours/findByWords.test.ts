import { describe, expect, it } from 'vitest';
import { findByWords } from './findByWords.ts';

const of = (...texts: string[]) => ({ texts });
const machines = [
  of('Loader at Hay Barn', 'Under Crag', 'T-88'),
  of('Tarrow 90', 'Hay Barn', 'AX-2207'),
  of('Mürle 12', 'High Barn', 'B 4'),
];
const names = (typed: string) => findByWords(machines, typed).map(({ texts }) => texts[0]);

describe('finding by part of a name', () => {
  it('takes every word, in any order, from name, farm or serial', () => {
    expect(names('barn tar')).toEqual(['Tarrow 90']);
    expect(names('2207')).toEqual(['Tarrow 90']);
    expect(names('nothing')).toEqual([]);
  });
  it('puts a name that starts with it first', () => {
    expect(names('ta')).toEqual(['Tarrow 90']);
    expect(names('hay')).toEqual(['Loader at Hay Barn', 'Tarrow 90']);
    expect(names('t')[0]).toBe('Tarrow 90');
  });
  it('lets case and accents go', () => {
    expect(names('MURLE')).toEqual(['Mürle 12']);
  });
  it('finds everything, up to a number, when nothing is typed', () => {
    expect(findByWords(machines, ' ', 2)).toHaveLength(2);
  });
});
