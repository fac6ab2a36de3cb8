import { expect, it } from 'vitest';
import { emptyGaugeForm, gaugeForm, gaugeRequest } from './gaugeForm.ts';

const calliper = {
  gaugeId: 2,
  name: 'Calliper',
  errorMm: 0.05,
  stepMm: 0.05,
  measures: ['thickness' as const],
  active: true,
};

it('a gauge is shown with twice its sd, and kept with the sd', () => {
  const form = gaugeForm(calliper, ',');
  expect(form.uText).toBe('0,10');
  expect(gaugeRequest(form, '.')).toEqual(calliper);
  expect(gaugeRequest({ ...form, uText: '± 0.08' }, '.')?.errorMm).toBeCloseTo(0.04, 12);
});

it('a gauge without a name or an error is none yet', () => {
  expect(gaugeRequest(emptyGaugeForm, '.')).toBeNull();
  expect(gaugeRequest({ ...emptyGaugeForm, name: 'Feeler', uText: '0' }, '.')).toBeNull();
  expect(gaugeRequest({ ...emptyGaugeForm, name: 'Feeler', uText: '0.1' }, '.')).toMatchObject({ stepMm: 0 });
});
