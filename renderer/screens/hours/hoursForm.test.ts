import { describe, expect, it } from 'vitest';
import { answered, emptyHoursForm, hoursRequest } from './hoursForm.ts';
import { machineOf } from './machineOf.ts';

const typed = { ...emptyHoursForm('2026-11-02', 'Ines', 4), dialText: '6 838,5' };

describe('the Hours strip', () => {
  it('sends what the dial shows, comma or point', () => {
    expect(hoursRequest(typed).request).toEqual({
      machineId: 4,
      takenOn: '2026-11-02',
      kind: 'reading',
      dialHours: 6838.5,
      newDialHours: null,
      errorHours: null,
      clock: null,
      saidBy: 'Ines',
      sure: false,
    });
  });
  it('names every field that keeps it back, in their order', () => {
    const form = { ...typed, machineId: null, dialText: '6.838', takenOn: '2026-02-30' };
    expect(hoursRequest(form)).toEqual({
      request: null,
      remarks: [
        { field: 'machineId', why: 'missing' },
        { field: 'dialHours', why: 'thousands-mark' },
        { field: 'takenOn', why: 'not-a-day' },
      ],
    });
  });
  it('takes a new meter whose old last figure nobody knows, and not one with no figure of its own', () => {
    const form = { ...typed, kind: 'new-meter' as const, dialText: '', newDialText: '12' };
    expect(hoursRequest(form).request).toMatchObject({ dialHours: null, newDialHours: 12 });
    expect(hoursRequest({ ...form, newDialText: '' }).remarks).toEqual([{ field: 'newDialHours', why: 'missing' }]);
  });
  it('sends the pace of a new meter’s clock with how that is known, and not without', () => {
    const form = { ...typed, kind: 'new-meter' as const, newDialText: '0', clockText: '0,8' };
    expect(hoursRequest(form).remarks).toEqual([{ field: 'clockWhy', why: 'missing' }]);
    const known = { ...form, clockReason: ' by the diary ' };
    expect(hoursRequest(known).request?.clock).toEqual({ hoursPerDialHour: 0.8, reason: 'by the diary' });
    expect(hoursRequest({ ...known, clockText: '80' }).remarks).toEqual([{ field: 'clock', why: 'out-of-bounds' }]);
    expect(hoursRequest({ ...known, clockText: '1' }).request?.clock).toBeNull();
    expect(hoursRequest({ ...known, kind: 'reading' }).request?.clock).toBeNull();
  });
  it('leaves the spread of an estimate to the record when it is not given', () => {
    expect(hoursRequest({ ...typed, kind: 'estimate' }).request).toMatchObject({ kind: 'estimate', errorHours: null });
  });
});

describe('an answered question', () => {
  it('of a new meter moves the figure to the new meter and asks for the old one', () => {
    const { form, send } = answered({ ...typed, dialText: '12' }, 'new-meter');
    expect(form).toMatchObject({ kind: 'new-meter', newDialText: '12', dialText: '' });
    expect(send).toBeNull();
  });
  it('of a rollover or an estimate is sent at once as that', () => {
    expect(answered(typed, 'rollover')).toMatchObject({ form: { kind: 'rollover' }, send: { sure: false } });
    expect(answered(typed, 'keep-as-estimate')).toMatchObject({ form: { kind: 'estimate' }, send: { sure: false } });
  });
  it('of a slip of the finger sends nothing and loses nothing', () => {
    expect(answered(typed, 'typed-wrong')).toEqual({ form: typed, send: null });
  });
  it('that the figure is right sends it again, sure', () => {
    expect(answered(typed, 'right-as-read')).toEqual({ form: typed, send: { sure: true } });
  });
});

it('the strip opens on the machine the screen is of', () => {
  expect(machineOf('/machine/3')).toBe(3);
  expect(machineOf('/strip-down/12')).toBe(12);
  expect(machineOf('/take-in/3')).toBeUndefined();
  expect(machineOf('/')).toBeUndefined();
});
