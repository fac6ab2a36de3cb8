import type { hoursAdd } from '#core/contract/hours.ts';
import type { AskOf } from '#core/contract/operation.ts';
import { isDay } from '#core/units/day.ts';
import { readNumber } from '../../words/readNumber.ts';

export type HoursRequest = AskOf<typeof hoursAdd>;
export type HoursKind = HoursRequest['kind'];

/** The Hours strip as typed. */
export type HoursForm = {
  machineId: number | null;
  kind: HoursKind;
  dialText: string;
  /** what the new meter shows; only of a new meter */
  newDialText: string;
  /** how far an estimate may be off, 1 sd; only of an estimate; empty: a quarter of the hours since the last reading */
  errorText: string;
  /** machine hours in one hour of the new meter's dial; only of a new meter; empty: 1 */
  clockText: string;
  /** how that is known */
  clockReason: string;
  takenOn: string;
  saidBy: string;
};

export type HoursField = 'machineId' | 'dialHours' | 'newDialHours' | 'errorHours' | 'clock' | 'clockWhy' | 'takenOn';
export type HoursRemark = {
  field: HoursField;
  why:
    | 'missing'
    | 'not-a-number'
    | 'two-decimal-marks'
    | 'thousands-mark'
    | 'below-nought'
    | 'not-a-day'
    | 'out-of-bounds';
};

export const emptyHoursForm = (today: string, saidBy: string, machineId: number | null = null): HoursForm => ({
  machineId,
  kind: 'reading',
  dialText: '',
  newDialText: '',
  errorText: '',
  clockText: '',
  clockReason: '',
  takenOn: today,
  saidBy,
});

/** The request the strip stands for, or what keeps it from being one, in the order of the fields. */
export function hoursRequest(
  form: HoursForm,
  sure = false,
): { request: HoursRequest; remarks: [] } | { request: null; remarks: HoursRemark[] } {
  const remarks: HoursRemark[] = [];
  const figure = (field: HoursField, text: string, mayBeEmpty: boolean): number | null => {
    const read = readNumber(text, 'h');
    if (read.ok && read.value >= 0) return read.value;
    if (read.ok) remarks.push({ field, why: 'below-nought' });
    else if (read.why !== 'empty') remarks.push({ field, why: read.why });
    else if (!mayBeEmpty) remarks.push({ field, why: 'missing' });
    return null;
  };
  if (form.machineId === null) remarks.push({ field: 'machineId', why: 'missing' });
  const newMeter = form.kind === 'new-meter';
  const dialHours = figure('dialHours', form.dialText, newMeter);
  const newDialHours = newMeter ? figure('newDialHours', form.newDialText, false) : null;
  const errorHours = form.kind === 'estimate' ? figure('errorHours', form.errorText, true) : null;
  const clock = newMeter ? clockOf(form, remarks) : null;
  if (!isDay(form.takenOn)) remarks.push({ field: 'takenOn', why: 'not-a-day' });
  if (remarks.length > 0 || form.machineId === null) return { request: null, remarks };
  const { machineId, kind, takenOn, saidBy } = form;
  return {
    request: { machineId, takenOn, kind, dialHours, newDialHours, errorHours, clock, saidBy: saidBy.trim(), sure },
    remarks: [],
  };
}

const CLOCK = { from: 0.1, to: 10 };

/** The pace of the new meter's clock: with it goes how that is known. */
function clockOf({ clockText, clockReason }: HoursForm, remarks: HoursRemark[]): HoursRequest['clock'] {
  const read = readNumber(clockText, 'h');
  if (!read.ok) {
    if (read.why !== 'empty') remarks.push({ field: 'clock', why: 'out-of-bounds' });
    return null;
  }
  const hoursPerDialHour = read.value;
  if (hoursPerDialHour < CLOCK.from || hoursPerDialHour > CLOCK.to) {
    remarks.push({ field: 'clock', why: 'out-of-bounds' });
    return null;
  }
  if (hoursPerDialHour !== 1 && clockReason.trim() === '') remarks.push({ field: 'clockWhy', why: 'missing' });
  return hoursPerDialHour === 1 ? null : { hoursPerDialHour, reason: clockReason.trim() };
}

/**
 * What the form becomes when a question about its dial is answered. `send` is null where the person has more to say
 * first: a new meter needs the old one's last figure, something typed wrong is typed again.
 */
export function answered(form: HoursForm, choice: string): { form: HoursForm; send: { sure: boolean } | null } {
  switch (choice) {
    case 'new-meter':
      // what was typed is what the new meter shows; the old one's last figure is asked for, and may stay empty
      return { form: { ...form, kind: 'new-meter', newDialText: form.dialText, dialText: '' }, send: null };
    case 'rollover':
      return { form: { ...form, kind: 'rollover' }, send: { sure: false } };
    case 'typed-wrong':
      return { form: { ...form, kind: 'reading' }, send: null };
    case 'estimate':
    case 'keep-as-estimate':
      return { form: { ...form, kind: 'estimate' }, send: { sure: false } };
    default:
      return { form, send: { sure: true } };
  }
}
