import { describe, expect, test } from 'vitest';
import type { ShopFigure } from '#core/contract/shopFigures.ts';
import { figuresAsk, readBars, readFigure, readRow } from './figuresForm.ts';

const step: ShopFigure = {
  ...{ name: 'oversizeStepMm', value: 0.5, usual: 0.5, from: 0.05, to: 10, whole: false, unit: 'mm' },
  ...{ howKnown: 'common-practice', source: 'common practice, no source' },
};

describe('the figures of repair as typed', () => {
  test('keep only what differs from the program’s own', () => {
    const form = { texts: { oversizeStepMm: '0,25' }, barsText: '40 45', rack: [] };
    expect(figuresAsk(form, [step])).toEqual({ changed: { oversizeStepMm: 0.25 }, roundBarsMm: [40, 45], rack: [] });
    expect(figuresAsk({ ...form, texts: { oversizeStepMm: '0.5' } }, [step])?.changed).toEqual({});
  });

  test('a figure beyond its bounds, or that cannot be read, is none', () => {
    expect(readFigure(step, '12')).toBeNull();
    expect(readFigure(step, 'half')).toBeNull();
    expect(readFigure({ ...step, whole: true, from: 0 }, '1.5')).toBeNull();
    expect(figuresAsk({ texts: { oversizeStepMm: '' }, barsText: '40', rack: [] }, [step])).toBeNull();
  });

  test('bars are parted by spaces, with a comma or a point as the decimal', () => {
    expect(readBars('16 18,5; 20\n25')).toEqual([16, 18.5, 20, 25]);
    expect(readBars('')).toBeNull();
    expect(readBars('16 -4')).toBeNull();
  });

  test('a row of the rack needs a sort, a length and a whole count', () => {
    expect(readRow({ bar: ' steel round 60 ', lengthText: '840', countText: '2' })).toEqual({
      ...{ bar: 'steel round 60', lengthMm: 840, count: 2 },
    });
    expect(readRow({ bar: '', lengthText: '840', countText: '2' })).toBeNull();
    expect(readRow({ bar: 'steel round 60', lengthText: '840', countText: '1.5' })).toBeNull();
  });
});
