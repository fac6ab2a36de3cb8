import { describe, expect, it } from 'vitest';
import { addDays, day } from '../units/day.ts';
import * as q from './quantityText.ts';

const gap = '\u2009';

describe('hours', () => {
  it('stand whole with a thin gap between thousands', () => {
    expect(q.hoursFigure(8500)).toBe(`8${gap}500`);
    expect(q.hoursFigure(60000.4)).toBe(`60${gap}000`);
    expect(q.hoursFigure(1234567)).toBe(`1${gap}234${gap}567`);
    expect(q.hoursText(780)).toBe('780\u00A0h');
  });
  it('below 100 left are to ten, above are whole', () => {
    expect(q.hoursLeftFigure(43)).toBe('40');
    expect(q.hoursLeftFigure(99.6)).toBe('100');
    expect(q.hoursLeftFigure(1487)).toBe(`1${gap}487`);
    expect(q.hoursLeftFigure(-87)).toBe('\u221290');
  });
  it('that passed carry a true minus, and a nought never does', () => {
    expect(q.hoursLeftFigure(-520)).toBe('\u2212520');
    expect(q.hoursLeftFigure(-3)).toBe('0');
    expect(q.wholeFigure(-0.4)).toBe('0');
  });
});

describe('millimetres', () => {
  it('take their decimals from the gauge', () => {
    expect(q.sizeFigure(10.2, 0.01)).toBe('10.20');
    expect(q.sizeFigure(10.2, 0.02)).toBe('10.20');
    expect(q.sizeFigure(40.125, 0.001)).toBe('40.125');
    expect(q.sizeFigure(11.96, 0.1)).toBe('12.0');
    expect(q.sizeFigure(11.6, 1)).toBe('12');
    expect(q.sizeFigure(11.6, 0)).toBe('11.60');
  });
  it('of a limit stand as set, one decimal at least', () => {
    expect(q.limitFigure(12)).toBe('12.0');
    expect(q.limitFigure(9.5)).toBe('9.5');
    expect(q.limitFigure(40.25)).toBe('40.25');
    expect(q.limitFigure(25.4 / 8)).toBe('3.175');
  });
  it('are written with a comma where the shop writes commas', () => {
    expect(q.sizeFigure(1234.5, 0.01, ',')).toBe(`1${gap}234,50`);
    expect(q.limitFigure(9.5, ',')).toBe('9,5');
    expect(q.gaugeErrorFigure(0.05, ',')).toBe('±0,10');
  });
  it('of a gauge error are twice the sd on record', () => {
    expect(q.gaugeErrorFigure(0.05)).toBe('±0.10');
    expect(q.gaugeErrorFigure(0.002)).toBe('±0.004');
  });
});

describe('dates', () => {
  const asOf = day('2026-10-19');
  it('read as a person says them', () => {
    expect(q.dayText(day('2026-10-12'))).toBe('12 Oct 2026');
    expect(q.dayText(day('2026-03-04'))).toBe('4 Mar 2026');
    expect(q.monthYearText(day('2027-07-31'))).toBe('Jul 2027');
  });
  it('of a forecast end at two seasons', () => {
    expect(q.whenText(day('2026-11-30'), asOf)).toBe('Nov 2026');
    expect(q.whenText(addDays(asOf, 730), asOf)).toBe('Oct 2028');
    expect(q.whenText(addDays(asOf, 731), asOf)).toBe('check next winter');
    expect(q.whenText(null, asOf)).toBe('check next winter');
    expect(q.whenText(day('2026-08-01'), asOf)).toBe('passed');
  });
});

describe('a range in a sentence', () => {
  it('names low, high and the likely one', () => {
    expect(q.hoursLeftSentence({ low: 150, middle: 470, high: 880 })).toBe('150 to 880 hours, likely 470');
  });
  it('says it may have passed when the low is behind', () => {
    expect(q.hoursLeftSentence({ low: -150, middle: 60, high: 340 })).toBe(
      'may have passed up to 150 hours ago, at most 340 left, likely 60 left',
    );
    expect(q.hoursLeftSentence({ low: -520, middle: -270, high: -60 })).toBe('passed, 60 to 520 hours ago, likely 270');
    expect(q.hoursLeftSentence({ low: -520, middle: -270, high: 200 })).toBe(
      'may have passed up to 520 hours ago, at most 200 left, likely passed 270 hours ago',
    );
  });
  it('does not invent a figure beyond reckoning', () => {
    expect(q.hoursLeftSentence({ low: 900, middle: 2150, high: null })).toBe(`from 900 hours on, likely 2${gap}150`);
    expect(q.hoursLeftSentence({ low: 900, middle: null, high: null })).toBe('from 900 hours on');
    expect(q.hoursLeftSentence({ low: null, middle: null, high: null })).toBe('further off than can be reckoned');
  });
});

describe('the rest', () => {
  it('a chance is never nought or certain', () => {
    expect(q.chanceText(0)).toBe('less than 1 in 20');
    expect(q.chanceText(0.32)).toBe('about 3 in 10');
    expect(q.chanceText(1)).toBe('more than 19 in 20');
  });
  it('a basis says what is its own', () => {
    expect(q.basisText(0, 14)).toBe('no own reading, 14 like parts');
    expect(q.basisText(1, 1)).toBe('1 own reading, 1 like part');
    expect(q.basisFigure(3, 14)).toBe('3 + 14');
  });
});
