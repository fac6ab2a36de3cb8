import { describe, expect, test } from 'vitest';
import { foldHead, likelyNouns, matchHeads } from './sheetHeads.ts';
import { columnsOfNoun, headAliases, sheetNouns } from './sheetNouns.ts';

describe('heads of a sheet', () => {
  test('are compared without case, accents, marks and units', () => {
    expect(foldHead('Größe [mm]')).toEqual({ text: 'grosse', unit: 'mm' });
    expect(foldHead('Dial_Hours (h)')).toEqual({ text: 'dial hours', unit: 'h' });
    expect(foldHead('SIZE in')).toEqual({ text: 'size', unit: 'in' });
    expect(foldHead('hours')).toEqual({ text: 'hours', unit: null });
  });
  test('stand for one column each; a slip of the pen is told as one', () => {
    const matches = matchHeads('sizes', ['Tractor', 'Postion', 'Date', 'Date', 'Size']);
    expect(matches.get('machine')).toMatchObject({ place: 0, how: 'alias' });
    expect(matches.get('position')).toMatchObject({ place: 1, how: 'near', distance: 1 });
    expect(matches.get('date')).toMatchObject({ place: 2, how: 'same' });
    expect(matches.get('size_mm')).toMatchObject({ place: 4, how: 'same' });
    expect([...matches.values()].map(({ place }) => place)).not.toContain(3);
  });
  test('short words are never taken for one another', () => {
    expect(matchHeads('hours', ['dag', 'unis']).size).toBe(0);
  });
  test.each(sheetNouns)('a sheet with the columns of %s is told for one', (noun) => {
    expect(likelyNouns(columnsOfNoun(noun).map(({ name }) => name))[0]).toBe(noun);
  });
  test('every alias is folded already, and none is two columns of one noun', () => {
    for (const aliases of Object.values(headAliases))
      for (const alias of aliases) expect(foldHead(alias).text).toBe(alias);
    for (const noun of sheetNouns) {
      const all = columnsOfNoun(noun).flatMap(({ name }) => [foldHead(name).text, ...(headAliases[name] ?? [])]);
      expect(all.filter((alias, place) => all.indexOf(alias) !== place)).toEqual([]);
    }
  });
});
