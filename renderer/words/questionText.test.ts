import { describe, expect, it } from 'vitest';
import { answerText, questionText } from './questionText.ts';

const gap = '\u2009';
const asked = (code: string, facts: Record<string, string | number | boolean | null>) => ({ code, facts, choices: [] });

describe('a question', () => {
  it('about a size names both figures, the day and the gauge’s error', () => {
    const { fact, meanwhile } = questionText(
      asked('better-than-last', { sizeMm: 11.75, lastSizeMm: 11.04, lastOn: '2024-01-10' }),
      { writing: '.', decimals: 2, gaugeErrorMm: 0.05, measures: 'thickness' },
    );
    expect(fact).toBe('11.75\u00A0mm is thicker than 11.04\u00A0mm on 10 Jan 2024; gauge error ±0.10\u00A0mm.');
    expect(meanwhile).toBe('Kept, and left out of the forecast until answered.');
  });
  it('about a bore says smaller, in the shop’s own writing', () => {
    const { fact } = questionText(asked('better-than-new', { sizeMm: 39.7, newSizeMm: 40 }), {
      writing: ',',
      measures: 'bore',
    });
    expect(fact).toBe('39,70\u00A0mm is smaller than new, 40,0\u00A0mm.');
  });
  it('about inches names what they would be in mm', () => {
    const { fact } = questionText(asked('wrong-unit', { sizeMm: 1.18, likelyMm: 29.972, unit: 'inch' }), {
      writing: '.',
    });
    expect(fact).toBe('1.18\u00A0mm is far out; read as inch it would be 29.97\u00A0mm.');
  });
  it('about a dial names the last figure and what would fit', () => {
    const { fact, meanwhile } = questionText(
      asked('dial-went-back', {
        dialHours: 812,
        lastDialHours: 4120,
        lastReadOn: '2026-03-04',
        rolloverPlausible: false,
        tenTimesFits: true,
      }),
      { writing: '.' },
    );
    expect(fact).toBe(`4${gap}120 h on 4 Mar 2026, 812 h now: the dial went back.`);
    expect(meanwhile).toBe(`8${gap}120 h would fit. Not kept until you say.`);
  });
  it('nobody has words for is still asked', () => {
    expect(questionText(asked('odd-smell', {}), { writing: '.' }).fact).toBe('Odd smell.');
    expect(answerText('smell-again')).toEqual({ text: 'smell again', letter: 'S' });
  });
});
